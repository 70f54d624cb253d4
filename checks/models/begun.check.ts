import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { StartAnswers } from '../../src/bench/events/index.ts';
import { readDraft, withLevel } from '../../src/bench/grow/grown-file.ts';
import { startFile } from '../../src/bench/grow/start-file.ts';
import type { ModelFile } from '../../src/bench/models/index.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';

let any: ModelFile;
beforeAll(async () => {
  const { models } = await loadModels(join(import.meta.dirname, '../../models'));
  any = models.get('any-pocket-player')!.file;
});

const ALL: StartAnswers[] = (['battery', 'battery-and-charger', 'mains-supply'] as const).flatMap((power) =>
  (['none', 'plain', 'lit'] as const).flatMap((display) =>
    [true, false].flatMap((slot) =>
      (['none', 'speaker', 'socket'] as const).flatMap((sound) =>
        [true, false].map((charging): StartAnswers => ({ power, cell_volts: 3, display, slot, sound, charging })),
      ),
    ),
  ),
);
const idsOf = (section: readonly { readonly id: string }[]): string[] => section.map(({ id }) => id);

describe('a model that is begun by answering six questions', () => {
  it('holds together whatever is answered', () => {
    expect(ALL).toHaveLength(108);
    for (const answers of ALL) {
      const read = readDraft(withLevel(startFile(any, answers)));
      expect([answers, read.ok ? [] : read.problems]).toEqual([answers, []]);
    }
  });

  it('has everything that any pocket player has when it has it all', () => {
    const file = startFile(any, {
      power: 'battery-and-charger',
      cell_volts: null,
      display: 'lit',
      slot: true,
      sound: 'speaker',
      charging: true,
    });
    expect(file).toEqual(any);
  });

  it('has no block, function, fault or remedy of what the device does not have', () => {
    const file = startFile(any, { power: 'battery', cell_volts: 3, display: 'none', slot: false, sound: 'socket', charging: false });
    const gone = ['display', 'ribbon', 'light', 'slot', 'slot-joints', 'cartridge', 'speaker', 'charge-port', 'charge-control', 'charger'];
    expect(idsOf(file.blocks).filter((id) => gone.includes(id))).toEqual([]);
    expect(idsOf(file.functions)).toEqual(['starts', 'runs-on-battery', 'sound', 'keys', 'link', 'closes']);
    expect(file.faults.filter(({ block }) => gone.includes(block))).toEqual([]);
    expect(idsOf(file.slots)).toEqual(['board', 'shell', 'battery']);
    expect(JSON.stringify(file.remedies)).not.toMatch(/"display|"slot-|"speaker/);
  });

  it('asks for the proof of a lithium cell where the voltage may be that of one', () => {
    const cell = (cell_volts: number, charging: boolean) =>
      startFile(any, { power: 'battery', cell_volts, display: 'plain', slot: true, sound: 'speaker', charging }).cell?.chemistry;
    expect([3.6, 3.7, 3.85, 4.2, 7.4].map((volts) => cell(volts, true))).toEqual(Array(5).fill('li-ion'));
    expect([cell(2.4, true), cell(3, false), cell(1.5, false), cell(9, false), cell(3.7, false)]).toEqual([
      'nimh',
      'alkaline',
      'alkaline',
      'alkaline',
      'li-ion',
    ]);
  });
});
