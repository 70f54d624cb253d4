import { describe, expect, it } from 'vitest';
import { addPhotos } from './add-photos.ts';
import { gradeItem } from './grade-item.ts';
import { keepItem } from './keep-item.ts';
import { listItem } from './list-item.ts';
import { putDemoAway } from './put-demo-away.ts';
import { returnItem } from './return-item.ts';
import { scrapItem } from './scrap-item.ts';
import { sellItem, usualFeeMinor } from './sell-item.ts';
import { setBench } from './set-bench.ts';
import { kindsOf, recordable } from './testing/recordable.ts';
import { undo } from './undo.ts';

describe('letting a unit go', () => {
  it('grades, lists and sells it', () => {
    expect(recordable(gradeItem('unit-1', 'parts', ''))).toMatchObject([{ body: { scale: 'salvor-1', grade: 'parts' } }]);
    expect(recordable(listItem('unit-1', 6500, 'the Saturday market'))).toMatchObject([{ body: { price_minor: 6500 } }]);
    const money = { priceMinor: 6000, postageChargedMinor: 300, feesMinor: 780, postageMinor: 350, currency: 'GBP', rate: 1, buyer: '' };
    const sale = sellItem({ itemId: 'unit-1', as: 'working', ...money });
    expect(sale.said).toBe('sold as working');
    expect(recordable(sale)).toMatchObject([
      { body: { price_minor: 6000, postage_charged_minor: 300, fees_minor: 780, postage_minor: 350 } },
    ]);
  });

  it('takes it back, scraps it or keeps it', () => {
    const back = { itemId: 'unit-1', refundMinor: 6000, feesBackMinor: 700, postageMinor: 350, reason: 'stopped charging' };
    expect(recordable(returnItem(back))).toMatchObject([{ body: { refund_minor: 6000, fees_back_minor: 700, postage_minor: 350 } }]);
    expect(kindsOf(scrapItem('unit-1', 'board burnt through'))).toEqual(['scrapped']);
    expect(kindsOf(keepItem('unit-1', ''))).toEqual(['kept']);
  });

  it('counts the usual fee to the nearest penny', () => {
    const usual = { fee_percent: 12.8, fees: [] };
    expect(usualFeeMinor(6499, usual, '', '2026-05-01')).toBe(832); // 831.872
    expect(usualFeeMinor(0, usual, '', '2026-05-01')).toBe(0);
  });

  it('counts the fee of a place by the own table that holds on the day', () => {
    const table = (from_day: string, percent: number) => ({
      place: 'Fair',
      from_day,
      bands: [{ up_to_minor: null, percent }],
      fixed_minor: 30,
      cap_minor: null,
    });
    const bench = { fee_percent: 50, fees: [table('2026-01-01', 10), table('2026-06-01', 20)] };
    expect(usualFeeMinor(1000, bench, 'Fair', '2026-05-01')).toBe(130);
    expect(usualFeeMinor(1000, bench, 'Fair', '2026-07-01')).toBe(230);
    expect(usualFeeMinor(1000, bench, 'Market', '2026-07-01')).toBe(500);
    expect(usualFeeMinor(1000, bench, 'Fair', '2025-07-01')).toBe(500);
  });
});

describe('the bench itself', () => {
  it('gives one event for each photo', () => {
    const gesture = addPhotos('unit-1', ['a'.repeat(64), 'b'.repeat(64)], 'board-front');
    expect(gesture.said).toBe('2 photos');
    expect(kindsOf(gesture)).toEqual(['photo-taken', 'photo-taken']);
  });

  it('sets only what is given, and puts the demo away', () => {
    expect(recordable(setBench({ fee_percent: 10 }))).toMatchObject([{ body: { fee_percent: 10 } }]);
    expect(kindsOf(putDemoAway())).toEqual(['demo-put-away']);
  });

  it('undoes the events of a gesture from the last to the first', () => {
    const ids = ['0198c0de-0000-7000-8000-00000000000a', '0198c0de-0000-7000-8000-00000000000b'];
    expect(recordable(undo(ids))).toMatchObject([{ body: { corrects: ids[1] } }, { body: { corrects: ids[0] } }]);
  });
});
