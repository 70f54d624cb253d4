/** Circuits that both simulators read as they stand; invented for this check, values as on small boards. */
export const CIRCUITS: Readonly<Record<string, string>> = {
  'loaded divider': `loaded divider
V1 in 0 9
R1 in a 10k
R2 a 0 22k
R3 a b 4.7k
R4 b 0 100k`,
  'unbalanced bridge with its meter': `bridge
V1 top 0 5
R1 top l 1k
R2 l 0 2.2k
R3 top r 1.5k
R4 r 0 3.9k
RM l r 10meg`,
  'ladder of twenty': [
    'ladder',
    'V1 n0 0 12',
    ...Array.from({ length: 20 }, (_, i) => `R${i} n${i} n${i + 1} 1k\nS${i} n${i + 1} 0 n${i} 0 SX`),
    'RL n20 0 1k',
    '.model SX SW(VT=-5 VH=0.1 RON=47k ROFF=1G)',
  ].join('\n'),
  'controlled sources of all four kinds': `controlled
V1 in 0 2
VS a b 0
R1 in a 1k
R2 b 0 1k
E1 e 0 b 0 3
RE e 0 1k
G1 0 g b 0 2m
RG g 0 500
F1 0 f VS 5
RF f 0 200
H1 h 0 VS 1500
RH h 0 1k`,
  'diodes in series, parallel and reverse': `diodes
V1 in 0 5
R1 in a 470
D1 a b DS
D2 b 0 DS
R2 in c 1k
D3 c 0 DK
D4 0 c DS
R3 in d 100
D5 d 0 DL
.model DS D(IS=2.5e-9 N=1.8 RS=0.6)
.model DK D(IS=1e-7 N=1.05 RS=0.1)
.model DL D(IS=1e-18 N=1.9 RS=3)`,
  'bridge rectifier at rest': `rectifier
V1 p n 6
D1 p plus DR
D2 n plus DR
D3 minus p DR
D4 minus n DR
RL plus minus 220
RG minus 0 1meg
RN n 0 10k
.model DR D(IS=1e-9 N=1.7 RS=0.05)`,
  'breakdown diode as a reference': `reference
V1 in 0 9
R1 in z 330
D1 0 z DZ
RL z 0 2.2k
.model DZ D(IS=1e-12 N=1.1 BV=5.1 IBV=5m RS=2)`,
  'transistor amplifier with emitter resistor': `amplifier
V1 vcc 0 9
R1 vcc b 47k
R2 b 0 10k
RC vcc c 2.2k
RE e 0 560
Q1 c b e QN
.model QN NPN(IS=1e-14 BF=220 VAF=75 IKF=0.08 ISE=2e-14 NE=1.6 BR=4 RB=30 RC=0.5 RE=0.2)`,
  'complementary pair of a small amplifier': `pair
V1 vcc 0 6
V2 in 0 3.1
R1 vcc bp 4.7k
D1 bp in DS
D2 in bn DS
R2 bn 0 4.7k
Q1 vcc bp out QN
Q2 0 bn out QP
RL out mid 8
V3 mid 0 3
.model DS D(IS=2e-9 N=1.8)
.model QN NPN(IS=5e-14 BF=120 VAF=60)
.model QP PNP(IS=5e-14 BF=90 VAF=50)`,
  'transistor as a saturated switch': `switch
V1 vcc 0 5
V2 drive 0 3.3
RB drive b 4.7k
RC vcc c 150
Q1 c b 0 QN
.model QN NPN(IS=1e-14 BF=200 BR=3 VAF=80 RB=10 RC=0.8)`,
  'field-effect switch with body diode': `pass
V1 bat 0 3.7
RG g 0 100k
RS g bat 1meg
M1 out g bat bat MP W=2m L=1u
RL out 0 22
M2 x out 0 0 MN W=10u L=2u
RX bat x 10k
M3 0 bat y y MP W=1m L=1u
RY bat y 1k
.model MP PMOS(VTO=-0.9 KP=4e-5 LAMBDA=0.03 GAMMA=0.4)
.model MN NMOS(VTO=0.7 KP=1e-4 LAMBDA=0.02 GAMMA=0.5 PHI=0.65)`,
  'discrete series regulator': `series regulator
V1 in 0 9
R1 in b 680
D1 0 b DZ
Q1 in b out QN
RL out 0 68
Q2 c out 0 QN
R2 in c 100k
.model DZ D(IS=1e-13 N=1.1 BV=5.6 IBV=4m RS=3)
.model QN NPN(IS=3e-14 BF=150 VAF=70 IKF=0.5 RB=5)`,
  'two-transistor current limit': `limit
V1 in 0 5
R1 in b1 1k
Q1 in b1 s QN
RS s out 4.7
Q2 b1 s out QN
RL out 0 10
.model QN NPN(IS=2e-14 BF=180 VAF=90)`,
  'coil, capacitor and switches at rest': `mixed
V1 in 0 5
L1 in a 10u
C1 a 0 10u
S1 a b ctl 0 SX
VC ctl 0 3
RB b 0 100
W1 a d VC WX
RC ctl 0 1k
RD d 0 47
I1 0 b 5m
.model SX SW(VT=1.5 VH=0.2 RON=0.1 ROFF=10meg)
.model WX CSW(IT=1m IH=0.1m RON=0.2 ROFF=10meg)`,
  'subcircuit of protection at each of three pins': `protected
.subckt clamp pin rail
D1 pin rail DP
D2 0 pin DP
R1 pin inner 330
.model DP D(IS=1e-15 N=1.1 RS=5)
.ends
V1 vdd 0 3.3
R1 vdd p1 10k
R2 p1 0 100k
V2 p2s 0 5
R3 p2s p2 2.2k
V3 p3s 0 -2
R4 p3s p3 1.5k
X1 p1 vdd clamp
X2 p2 vdd clamp
X3 p3 vdd clamp
RL vdd 0 470`,
};

/** Changes that a fault makes to the text of a circuit: the same for both simulators. */
export const FAULTS: readonly { circuit: string; name: string; from: string; to: string }[] = [
  { circuit: 'loaded divider', name: 'R2 open', from: 'R2 a 0 22k', to: '' },
  { circuit: 'transistor amplifier with emitter resistor', name: 'R2 open', from: 'R2 b 0 10k', to: '' },
  { circuit: 'transistor amplifier with emitter resistor', name: 'RE shorted', from: 'RE e 0 560', to: 'RE e 0 10m' },
  { circuit: 'discrete series regulator', name: 'reference shorted', from: 'D1 0 b DZ', to: 'D1 0 b DZ\nRX b 0 0.1' },
  { circuit: 'discrete series regulator', name: 'load ten times too heavy', from: 'RL out 0 68', to: 'RL out 0 6.8' },
  { circuit: 'field-effect switch with body diode', name: 'gate cut off', from: 'RG g 0 100k', to: '' },
  { circuit: 'bridge rectifier at rest', name: 'one diode shorted', from: 'D1 p plus DR', to: 'R9 p plus 50m' },
  { circuit: 'two-transistor current limit', name: 'output shorted', from: 'RL out 0 10', to: 'RL out 0 20m' },
];
