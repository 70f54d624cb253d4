import { describe, expect, it } from 'vitest';
import { deviceModelOf } from '../device-model.ts';
import { lampBoards, LAMP_MODEL } from '../testing/lamp-board.ts';
import { boardModelOf } from './board-model.ts';
import { standIns } from './stand-ins.ts';

const KNOWLEDGE = lampBoards().knowledge(LAMP_MODEL, [])!;
const BOARD = boardModelOf(LAMP_MODEL, KNOWLEDGE, 'lamp');
const fault = (id: string) => BOARD.model.file.faults.find((each) => each.id === id)!;
const remedy = (id: string) => BOARD.model.file.remedies.find((each) => each.id === id)!;

describe('faults of the model file in its circuit', () => {
  it('are those of the part that a name tells, and of the only part that can have them', () => {
    const found = new Map([...standIns(LAMP_MODEL, KNOWLEDGE)].map(([id, faults]) => [id, faults.map((each) => each.id)]));
    expect(found.get('fuse-open')).toEqual(['f1:open']);
    expect(found.get('regulator-dead')).toEqual(['u1:dead']);
    expect(found.get('cell-flat')).toEqual(['bt1:drifted-down']);
    expect(found.get('spring-dirty')!.every((id) => id.startsWith('j1'))).toBe(true);
    expect([...found.keys()]).not.toContain('shell-cracked');
    expect([...found.keys()]).not.toContain('cell-swollen');
  });

  it('give them their rate and what the eye finds, and stay where none stands for them', () => {
    expect(fault('f1:open').rate).toBeCloseTo(0.06, 12);
    expect(fault('f1:open').seen).toMatchObject({ burnt: 0.2 });
    expect(fault('cell-swollen').rate).toBe(0.02);
    expect(BOARD.model.file.faults.map(({ id }) => id)).not.toContain('fuse-open');
    expect(BOARD.model.file.faults.slice(0, KNOWLEDGE.faults.length).map(({ id }) => id)).toEqual(KNOWLEDGE.faults.map(({ id }) => id));
  });

  it('are mended through them: a new part has none of the faults of the old one, another board none of its parts', () => {
    expect(remedy('new-fuse').mends).toEqual({ 'f1:open': 0.85, 'f1:missing': 0.85 });
    expect(remedy('new-cell').mends).toMatchObject({ 'bt1:drifted-down': 0.97, 'bt1:open': 0.97, 'cell-swollen': 0.97 });
    expect(Object.keys(remedy('other-board').mends)).toEqual(expect.arrayContaining(['r1:open', 'c1:short', 'u1:dead', 'f1:open']));
    expect(Object.keys(remedy('other-board').mends)).not.toContain('bt1:open');
  });

  it('keep a function from working as the circuit says, and not by their block', () => {
    const device = new Map(BOARD.device.faults.map((each) => [each.id, each]));
    expect(device.get('r1:open')!.works).toEqual({ light: 0 });
    expect(device.get('c2:open')!.works).toEqual({ light: 1 });
    expect(device.get('shell-cracked')!.works).toBeUndefined();
    expect(deviceModelOf(LAMP_MODEL).faults.every(({ works }) => works === undefined)).toBe(true);
  });
});
