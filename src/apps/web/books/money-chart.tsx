import { useEffect, useMemo, useRef } from 'react';
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { currencyDigits } from '../../../core/quantity/index.ts';
import type { BooksView } from '../../../bench/views/index.ts';
import { money, roughMoney } from '../format/money.ts';
import { monthName } from '../format/when.ts';
import { runningSums } from './running.ts';

const HEIGHT_PX = 240;

/** Money in hand and profit, summed month by month, with the same in words for those who do not see the picture. */
export default function MoneyChart({ months, currency }: { readonly months: BooksView['months']; readonly currency: string }) {
  const box = useRef<HTMLDivElement>(null);
  const running = useMemo(() => runningSums(months), [months]);
  useEffect(() => {
    const element = box.current!;
    const chart = new uPlot(chartOptions(element, currency, running.times), chartData(running, currency), element);
    const watcher = new ResizeObserver(() => chart.setSize({ width: element.clientWidth, height: HEIGHT_PX }));
    watcher.observe(element);
    return () => {
      watcher.disconnect();
      chart.destroy();
    };
  }, [running, currency]);
  const last = months.toSorted((a, b) => a.month.localeCompare(b.month)).at(-1)!;
  const words = `From the first month to ${monthName(last.month)}: money in hand ${money(running.cashMinor.at(-1)!, currency)}, profit ${money(running.profitMinor.at(-1)!, currency)}.`;
  return (
    <figure>
      <div ref={box} className="chart" aria-hidden="true" />
      <figcaption className="small muted">{words} The table below has every month.</figcaption>
    </figure>
  );
}

function chartData({ times, cashMinor, profitMinor }: ReturnType<typeof runningSums>, currency: string): uPlot.AlignedData {
  const major = (minor: readonly number[]): number[] => minor.map((each) => each / 10 ** currencyDigits(currency));
  return [[...times], major(cashMinor), major(profitMinor)];
}

function chartOptions(element: HTMLElement, currency: string, times: readonly number[]): uPlot.Options {
  const style = getComputedStyle(element);
  const ink = style.color;
  const accent = style.accentColor;
  const grid = { stroke: style.borderTopColor, width: 1 };
  const axis = { stroke: ink, grid, ticks: grid };
  const months = { ...axis, splits: () => thinned(times, element.clientWidth), values: (_: uPlot, at: number[]) => at.map(monthAt) };
  const inMoney = (value: number): string => {
    const minor = Math.round(value * 10 ** currencyDigits(currency));
    return Number.isInteger(value) ? roughMoney(minor, currency) : money(minor, currency);
  };
  const points = { show: true, size: 7 };
  return {
    width: element.clientWidth,
    height: HEIGHT_PX,
    tzDate: (seconds) => uPlot.tzDate(new Date(seconds * 1000), 'UTC'),
    legend: { live: false },
    padding: [null, LABEL_PX / 2, null, null],
    axes: [months, { ...axis, size: 70, values: (_, ticks) => ticks.map(inMoney) }],
    series: [
      {},
      { label: 'Money in hand', stroke: ink, width: 2, dash: [6, 4], points },
      { label: 'Profit', stroke: accent, width: 2.5, points },
    ],
  };
}

const LABEL_PX = 110;

/** As many of the months as have room for their names. */
function thinned(times: readonly number[], widthPx: number): number[] {
  const step = Math.max(1, Math.ceil((times.length * LABEL_PX) / widthPx));
  return times.filter((_, index) => index % step === 0);
}

const monthAt = (seconds: number): string => monthName(new Date(seconds * 1000).toISOString().slice(0, 7));
