import { describe, expect, it } from 'vitest';
import { Id } from '../events/index.ts';
import { recipeFor } from '../recipes/index.ts';
import { LAMP_MODEL } from '../advice/testing/lamp-board.ts';
import { partRemedyNamed, remedyBetween, remedyOnNet, remedyOnPart } from './part-remedies.ts';

const named = (id: string) => partRemedyNamed(LAMP_MODEL, id);

describe('work on a part', () => {
  it('has a name that reads back to the same', () => {
    const made = [
      remedyOnPart(LAMP_MODEL, 'replace', 'C1'),
      remedyOnPart(LAMP_MODEL, 'clean', 'J1'),
      remedyBetween(LAMP_MODEL, 'clear', ['v33', '0']),
      remedyOnNet(LAMP_MODEL, 'lamp_a'),
    ];
    expect(made.map((each) => each!.spec.id)).toEqual(['replace.C1', 'clean.J1', 'clear.v33--0', 'trace.lamp_a']);
    for (const each of made) {
      expect(Id.safeParse(each!.spec.id).success).toBe(true);
      expect(named(each!.spec.id)).toEqual(each);
    }
  });

  it('writes nets in the letters that a name may have', () => {
    const circuit = LAMP_MODEL.circuit!;
    const netlist = { ...circuit.netlist, nodes: [...circuit.netlist.nodes, '+3v3#a'] };
    const model = { ...LAMP_MODEL, circuit: { ...circuit, netlist } };
    const { id } = remedyOnNet(model, '+3v3#a')!.spec;
    expect(Id.safeParse(id).success).toBe(true);
    expect(partRemedyNamed(model, id)!.nets).toEqual(['+3v3#a']);
  });

  it('says what is used up: parts alike are one in the drawer', () => {
    expect(named('replace.C1')!.uses).toMatchObject({ id: '0805.10u', name: '10u, 0805' });
    expect(named('replace.C3')!.uses!.id).toBe('0805.10u');
    expect(named('replace.C2')!.uses!.id).toBe('0603.100n');
  });

  it('names the recipe of its kind and of the part, and none where one would mislead', () => {
    const recipes = ['replace.C1', 'replace.U1', 'replace.J1', 'resolder.U1', 'clean.J1', 'wire.U1', 'wash.v33--0', 'trace.v33'].map(
      (id) => named(id)!.spec,
    );
    expect(recipes.map((spec) => recipeFor(spec)?.id ?? null)).toEqual([
      'replace-two-terminal',
      'replace-fine-pitch',
      'replace-connector',
      'refresh-joint',
      'clean-contacts',
      'repair-track-wire',
      'clean-after-liquid',
      null,
    ]);
  });

  it('comes with the cautions of its tools', () => {
    expect(named('replace.U1')!.spec.cautions).toEqual(['lithium-cell', 'hot-tool', 'fumes', 'esd']);
    expect(named('clean.J1')!.spec.cautions).toEqual(['lithium-cell', 'solvent', 'esd']);
  });

  it.each(['replace.C99', 'replace.BT1', 'clean.R1', 'clear.v33', 'clear.v33--nowhere', 'trace.nowhere', 'melt.C1', 'replace', ''])(
    'is none where it is called "%s"',
    (id) => {
      expect(named(id)).toBeNull();
    },
  );

  it('is none of a model without a circuit', () => {
    const { circuit: _, ...plain } = LAMP_MODEL;
    expect(partRemedyNamed(plain, 'replace.C1')).toBeNull();
  });
});
