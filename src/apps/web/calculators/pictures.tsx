import type { ReactNode } from 'react';

interface PictureProps {
  readonly id: string;
  /** The texts of the fields, which stand beside what they are about. */
  readonly values: Readonly<Record<string, string>>;
}

/** What a calculator is about, with its values where they belong. */
export function CalculatorPicture({ id, values }: PictureProps) {
  const drawn = PICTURES[id];
  if (!drawn) return null;
  return (
    <svg className="calculator-picture" viewBox="0 0 320 120" aria-hidden="true">
      {drawn(values)}
    </svg>
  );
}

type Draw = (values: Readonly<Record<string, string>>) => ReactNode;

const Label = ({ x, y, children }: { readonly x: number; readonly y: number; readonly children: ReactNode }) => (
  <text x={x} y={y} textAnchor="middle">
    {children}
  </text>
);

const track: Draw = ({ width_mm: width, copper_oz: ounces, layer }) => (
  <>
    <rect x="20" y="60" width="280" height="40" className="picture-board" />
    <rect x="100" y={layer === 'internal' ? 74 : 46} width="120" height="14" className="picture-copper" />
    <path d="M100 34h120M100 29v10M220 29v10" />
    <Label x={160} y={24}>
      {width} mm
    </Label>
    <Label x={262} y={layer === 'internal' ? 86 : 52}>
      {ounces} oz
    </Label>
  </>
);

const wire: Draw = ({ length_mm: length, current_a: amps }) => (
  <>
    <path d="M40 60C90 30 230 90 280 60" className="picture-wire" />
    <circle cx="40" cy="60" r="7" className="picture-copper" />
    <circle cx="280" cy="60" r="7" className="picture-copper" />
    <Label x={160} y={28}>
      {amps} A →
    </Label>
    {length !== undefined && (
      <>
        <path d="M40 98h240M40 93v10M280 93v10" />
        <Label x={160} y={116}>
          {length} mm
        </Label>
      </>
    )}
  </>
);

const melting: Draw = ({ awg, current_a: amps }) => (
  <>
    <path d="M30 60H140M180 60H290" className="picture-wire" />
    <circle cx="150" cy="64" r="5" className="picture-hot" />
    <circle cx="170" cy="57" r="4" className="picture-hot" />
    <Label x={160} y={28}>
      {amps} A
    </Label>
    <Label x={160} y={104}>
      AWG {awg}
    </Label>
  </>
);

const chip: Draw = ({ mark, part }) => (
  <>
    <rect x="80" y="35" width="160" height="56" className="picture-board" />
    <rect x="80" y="35" width="26" height="56" className="picture-copper" />
    <rect x="214" y="35" width="26" height="56" className="picture-copper" />
    <text x="160" y="72" textAnchor="middle" className="picture-mark">
      {mark}
    </text>
    <Label x={160} y={112}>
      {part === 'size' ? 'length × width' : part}
    </Label>
  </>
);

const divider: Draw = ({ in_v: input, upper_ohm: upper, lower_ohm: lower, load_ohm: load }) => (
  <>
    <path d="M110 6v10M110 52v16M110 104v10M110 60h100" />
    <rect x="100" y="16" width="20" height="36" className="picture-part" />
    <rect x="100" y="68" width="20" height="36" className="picture-part" />
    {load !== '0' && (
      <>
        <path d="M210 60v8M210 104v10" />
        <rect x="200" y="68" width="20" height="36" className="picture-part" />
        <Label x={258} y={90}>
          {load} Ω
        </Label>
      </>
    )}
    <Label x={60} y={16}>
      {input} V
    </Label>
    <Label x={60} y={40}>
      {upper} Ω
    </Label>
    <Label x={60} y={90}>
      {lower} Ω
    </Label>
    <Label x={240} y={54}>
      tap
    </Label>
  </>
);

const led: Draw = ({ supply_v: supply, drop_v: drop, current_ma: current }) => (
  <>
    <path d="M30 60h50M140 60h50M230 60h60" />
    <rect x="80" y="48" width="60" height="24" className="picture-part" />
    <path d="M190 44v32l36-16zM226 44v32M204 36l8-14M216 36l8-14" />
    <Label x={44} y={46}>
      {supply} V
    </Label>
    <Label x={110} y={94}>
      R?
    </Label>
    <Label x={208} y={98}>
      {drop} V
    </Label>
    <Label x={270} y={46}>
      {current} mA
    </Label>
  </>
);

const battery: Draw = ({ capacity_mah: capacity, health_percent: health }) => (
  <>
    <rect x="70" y="30" width="170" height="60" className="picture-board" />
    <rect x="240" y="48" width="12" height="24" className="picture-part" />
    <rect x="74" y="34" width={1.62 * Math.min(100, Math.max(0, Number(health) || 0))} height="52" className="picture-full" />
    <Label x={155} y={66}>
      {capacity} mAh
    </Label>
    <Label x={155} y={112}>
      {health} % left
    </Label>
  </>
);

const PICTURES: Readonly<Record<string, Draw>> = {
  'track-current': track,
  resistance: (values) => (values['conductor'] === 'wire' ? wire(values) : track(values)),
  wire,
  fusing: melting,
  'part-code': chip,
  divider,
  led,
  'run-time': battery,
};
