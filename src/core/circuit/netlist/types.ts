/** A place in the text of a netlist, counted from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** A mistake in the text: what is wrong, where, and what would be right. */
export interface NetlistProblem extends Place {
  readonly code: 'syntax' | 'number' | 'expression' | 'unknown-name' | 'duplicate' | 'nodes' | 'unsupported' | 'too-large';
  readonly message: string;
}

/** A word of a line, with its place. */
export interface Token extends Place {
  readonly text: string;
}

/** A line of the notation after continuation lines are joined and comments dropped. */
export interface Card {
  readonly tokens: readonly Token[];
}

/** The letters of SPICE for parts with fixed equations. */
export type PrimitiveKind = 'R' | 'C' | 'L' | 'V' | 'I' | 'D' | 'Q' | 'M' | 'E' | 'G' | 'F' | 'H' | 'S' | 'W';

/** Behavioural parts of boards; their equations stand in docs/netlist-format.md. */
export type BehaviourKind = 'LINREG' | 'BOOST' | 'BUCK' | 'LOAD' | 'CHARGER' | 'BATTERY';

/** One part after subcircuits are unfolded: names of nodes are global, numbers are SI. */
export interface Part extends Place {
  /** Its name with the path of subcircuits before it: `X1.R3`. As written, but compared without regard to case. */
  readonly name: string;
  readonly kind: PrimitiveKind | BehaviourKind;
  readonly nodes: readonly string[];
  /** R: ohm; C: farad; L: henry; V: volt; I: ampere; E, H: gain or ohm; G, F: siemens or gain. Others: 0. */
  readonly value: number;
  /** Parameters of the part: its own over those of its model. Lower case. */
  readonly params: Readonly<Record<string, number>>;
  /** Lower-case type of the `.model`: d, npn, pnp, nmos, pmos, sw, csw; empty where there is none. */
  readonly type: string;
  /** For F, H and W: the voltage source whose current controls it. */
  readonly control: string;
}

export interface Netlist {
  readonly title: string;
  readonly parts: readonly Part[];
  /** All nodes but ground ("0"), in order of first use. */
  readonly nodes: readonly string[];
  /** Kelvin; from `.temp`, default 27 °C. */
  readonly temperatureK: number;
  /** Lines that were read and have no effect on an operating point, as sentences. */
  readonly notes: readonly string[];
}

export type NetlistResult =
  | { readonly ok: true; readonly netlist: Netlist }
  | { readonly ok: false; readonly code: 'netlist'; readonly problems: readonly NetlistProblem[] };

/** Thrown inside the reader and caught at its border. */
export class NetlistMistake extends Error {
  constructor(readonly problem: NetlistProblem) {
    super(problem.message);
  }
}

export const mistake = (at: Place, code: NetlistProblem['code'], message: string): NetlistMistake =>
  new NetlistMistake({ line: at.line, column: at.column, code, message });
