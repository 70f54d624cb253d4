import { componentsOf, type Netlist, type Pad, type Placement } from '../../src/core/circuit/index.ts';
import { randomStream, type RandomStream } from '../../src/core/numeric/index.ts';

/**
 * A pocket board that nobody built, of the size of a real one: cell, fuse, switch, charger, boost and two linear rails, a processor, a memory and
 * an amplifier with protected pins, and seeded blocks of dividers, keys, transistor switches, lamps and filters on its rails.
 */
export interface SyntheticBoard {
  readonly text: string;
  /** Supplies that are not parts of the board. */
  readonly outside: readonly string[];
}

const MODELS = `.model DP D(IS=5e-15 N=1.05 RS=8)
.model DS D(IS=2.5e-9 N=1.75 RS=0.6 BV=75 IBV=5u)
.model DK D(IS=2e-7 N=1.04 RS=0.08)
.model DL D(IS=1e-18 N=1.9 RS=4)
.model DZ D(IS=1e-13 N=1.1 BV=6.2 IBV=1m RS=1.5)
.model QN NPN(IS=1e-14 BF=220 VAF=80 BR=4 RB=15 RC=0.8)
.model QP PNP(IS=1e-14 BF=180 VAF=60 BR=4 RB=15 RC=0.8)
.model MP PMOS(VTO=-0.8 KP=4e-5 LAMBDA=0.02)
.model MN NMOS(VTO=0.9 KP=8e-5 LAMBDA=0.02)
.subckt chip vdd gnd a b c d i=20m
XL vdd gnd LOAD i={i} von=1.5
D1 a vdd DP
D2 gnd a DP
D3 b vdd DP
D4 gnd b DP
D5 c vdd DP
D6 gnd c DP
D7 d vdd DP
D8 gnd d DP
RA a gnd 2meg
RC c gnd 3.3meg
.ends`;

const SPINE = `VCHG port_in 0 5
RJ1_1 port_in vport 0.03
DD1 0 vport DZ
CC1 vport 0 4.7u
XU1 vport batp 0 CHARGER icc=0.4 vcv=4.2
RR1 vport chg_led 1k
DD2 chg_led chg_stat DL
RR2 chg_stat 0 470
XBT1 cellp 0 BATTERY v=3.9 r=0.09
RJ2_1 cellp batp 0.02
RF1 batp fused 0.06
RSW1 fused vsw 0.04
MQ1 vsys q1g vsw vsw MP W=60m L=1u
RR3 q1g 0 100k
RR4 q1g vsw 1meg
CC2 vsys 0 22u
RR5 vsys en5 100k
RR6 en5 0 470k
XU2 vsys v5 0 en5 BOOST vset=5 eff=0.86 uvlo=2.5 ilimit=1.2
CC3 v5 0 22u
RR7 v5 en33 47k
RR8 en33 0 100k
XU3 v5 v33 0 en33 LINREG vset=3.3 dropout=0.25 ilimit=0.5
CC4 v33 0 10u
RR9 v33 en18 22k
RR10 en18 0 220k
XU4 v33 v18 0 en18 LINREG vset=1.8 dropout=0.2 ilimit=0.3
CC5 v18 0 10u
XU5 v33 0 rst key_a key_b bus0 CHIP i=45m
XU6 v18 0 core0 core1 bus0 bus1 CHIP i=60m
XU7 v33 0 bus0 bus1 mem0 mem1 CHIP i=12m
XU8 v5 0 snd_in snd_b mute vol CHIP i=8m
RR11 v33 rst 10k
CC6 rst 0 100n
RR12 v18 core0 4.7k
RR13 v18 core1 4.7k
RR14 v33 bus0 22k
RR15 v33 bus1 22k
RR16 bus1 mem0 33
RR17 mem1 0 10k
LL1 v5 v5a 10u
CC7 v5a 0 10u
RR18 v5a snd_b 22k
RR19 snd_b 0 22k
RLS1 snd_b spk 8
CC8 spk 0 220u
RR20 mute 0 100k
RR21 v5a vol 10k
RR22 vol 0 10k`;

/** The board of one seed; about 100 nodes and 200 parts with the default number of blocks. */
export function syntheticBoard(seed = 'synthetic board', blocks = 23): SyntheticBoard {
  const random = randomStream(seed);
  const lines = Array.from({ length: blocks }, (_, i) => BLOCKS[i % BLOCKS.length]!(`${i + 1}`, pick(random, RAILS), random));
  return { text: ['synthetic board', MODELS, SPINE.replaceAll('CHIP', 'chip'), ...lines].join('\n'), outside: ['VCHG'] };
}

const RAILS = ['v33', 'v18', 'v5a', 'vsys'] as const;
const E12 = [1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2];
const INPUTS = ['core1', 'bus1', 'mem1', 'snd_in', 'key_b', 'key_a'] as const;

const pick = <T>(random: RandomStream, from: readonly T[]): T => from[Math.floor(random() * from.length)]!;
const kilo = (random: RandomStream, decade: number): string => `${(pick(random, E12) * decade).toPrecision(3)}k`;

type Block = (id: string, rail: string, random: RandomStream) => string;

const divider: Block = (id, rail, random) => `RR${id}01 ${rail} div${id} ${kilo(random, 10)}
RR${id}02 div${id} 0 ${kilo(random, 10)}
CC${id}01 div${id} 0 100n
RR${id}03 div${id} adc${id} 1k
DD${id}01 adc${id} v33 DP
DD${id}02 0 adc${id} DP
RR${id}04 adc${id} 0 1meg`;

/** A key with its pull-up: the switch itself is 20 MΩ while nobody presses it. */
const key: Block = (id, _rail, random) => `RR${id}01 v33 k${id} ${kilo(random, 10)}
RSW${id}01 k${id} kc${id} 20meg
RR${id}02 kc${id} 0 100
CC${id}01 k${id} 0 100n
DD${id}01 0 k${id} DZ
RR${id}03 k${id} ki${id} 470
RR${id}04 ki${id} ${pick(random, INPUTS)} 1k`;

const lampSwitch: Block = (id, rail, random) => `RR${id}01 v33 qb${id} ${kilo(random, 1)}
RR${id}02 qb${id} 0 47k
QQ${id}01 lk${id} qb${id} 0 QN
RR${id}03 ${rail} la${id} ${pick(random, ['150', '220', '330'])}
DD${id}01 la${id} lk${id} DL
RR${id}04 lk${id} 0 220k`;

const loadSwitch: Block = (id, rail, random) => `MQ${id}01 sw${id} mg${id} ${rail} ${rail} MP W=20m L=1u
RR${id}01 ${rail} mg${id} 100k
QQ${id}02 mg${id} mb${id} 0 QN
RR${id}02 v33 mb${id} ${kilo(random, 10)}
CC${id}01 sw${id} 0 10u
RR${id}03 sw${id} 0 ${pick(random, ['470', '680', '1k'])}
XU${id}01 sw${id} 0 LOAD i=${pick(random, ['2m', '5m', '8m'])} von=1.2`;

const filter: Block = (id, rail, random) => `RFB${id}01 ${rail} f${id} 0.2
CC${id}01 f${id} 0 1u
RR${id}01 f${id} g${id} ${kilo(random, 1)}
CC${id}02 g${id} 0 100n
RR${id}02 g${id} h${id} ${kilo(random, 1)}
RR${id}03 h${id} 0 ${kilo(random, 10)}`;

const follower: Block = (id, rail, random) => `RR${id}01 ${rail} b${id} ${kilo(random, 10)}
RR${id}02 b${id} 0 ${kilo(random, 10)}
QQ${id}01 ${rail} b${id} e${id} QN
RR${id}03 e${id} 0 ${kilo(random, 1)}
QQ${id}02 0 e${id} o${id} QP
RR${id}04 ${rail} o${id} ${kilo(random, 1)}`;

const contact: Block = (id, rail, random) => `RR${id}01 ${rail} j${id} ${pick(random, ['22', '47', '100'])}
RJ${id}_1 j${id} p${id} 0.03
RR${id}02 p${id} 0 ${kilo(random, 1)}
DD${id}01 0 j${id} DZ
DD${id}02 p${id} v5 DS`;

const BLOCKS: readonly Block[] = [divider, key, lampSwitch, loadSwitch, filter, follower, contact];

const COLUMNS = 16;
const PITCH_MM = 2.2;

/** A placement of the parts of a netlist, row by row: pads of 0.6 mm, those of three nets and more in two rows at 0.65 mm. Capacitors lie on the back. */
export function syntheticPlacement(netlist: Netlist, outside: readonly string[]): Placement {
  const absent = new Set(outside.map((name) => name.toLowerCase()));
  const components = componentsOf({ ...netlist, parts: netlist.parts.filter(({ name }) => !absent.has(name.toLowerCase())) });
  return {
    pads: components.flatMap(({ ref, role, nets }, i) => {
      const [x, y] = [(i % COLUMNS) * PITCH_MM, Math.floor(i / COLUMNS) * PITCH_MM];
      const side = role === 'capacitor' ? ('back' as const) : ('front' as const);
      const [pitch, width] = nets.length > 2 ? [0.65, 0.35] : [1.1, 0.6];
      return nets.map((net, pin): Pad => {
        const across = nets.length > 2 ? Math.floor(pin / 2) : pin;
        const row = nets.length > 2 ? pin % 2 : 0;
        return { component: ref, pin: `${pin + 1}`, net, side, xMm: x + across * pitch, yMm: y + row * 1.2, widthMm: width, heightMm: 0.5 };
      });
    }),
  };
}
