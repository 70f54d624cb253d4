import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ComparisonView, JudgementView, Problem, ReferencesView } from '../../src/bench/views/index.ts';
import { comparedBoard } from './compared-board.ts';
import { openApp, type OpenedApp } from './open-app.ts';

let opened: OpenedApp;
let compared: ComparisonView;
beforeAll(async () => {
  opened = await openApp();
  const items = [{ item_id: 'tern', name: 'Tern', model_id: 'tern-tn20', expected_value_minor: 2000 }];
  const lot = { lot_id: 'lot-1', title: 'One Tern', seller: 'Harbour Clearance', price_minor: 900, currency: 'GBP', items };
  expect((await opened.ask('/api/events', { events: [{ kind: 'lot-bought', body: lot }] })).status).toBe(200);
  compared = await comparedBoard(opened, 'tern');
});
afterAll(() => opened.close());

const refused = async (response: Response): Promise<[number, string]> => {
  const problem = Problem.parse(await response.json());
  expect(problem.message).toMatch(/^\S.{20,}\.$/s);
  return [response.status, problem.code];
};

describe('comparing photos over the interface', () => {
  it('gives differences with their places, and the photo as it lies on the reference', async () => {
    const view = ComparisonView.parse(compared);
    expect(view.result!.differences).toMatchObject([{ rank: 1, shows: 'missing' }]);
    expect(view.result!.differences[0]!.outline_mm).not.toBeNull();
    const laid = await opened.ask(view.result!.laid_url);
    expect([laid.status, laid.headers.get('content-type')]).toEqual([200, 'image/jpeg']);
    const reference = await opened.ask(view.result!.reference_url);
    expect(reference.status).toBe(200);
  });

  it('is ended where it was, when it has ended already', async () => {
    const stopped = (await (await opened.ask(`/api/comparisons/${compared.key}/stop`, {})).json()) as ComparisonView;
    expect(stopped.stage).toBe('ready');
  });

  it('judges a photo that the bench holds, and tells the references of a model', async () => {
    const question = { photo: compared.question.photo, model_id: 'tern-tn20', side: 'board-front' };
    expect(JudgementView.parse(await (await opened.ask('/api/comparisons/judge', question)).json()).verdict).toBe('good');
    const { sides } = ReferencesView.parse(await (await opened.ask('/api/models/tern-tn20/references')).json());
    expect(sides.map(({ references }) => references.map(({ photo }) => photo))).toEqual([['shipped'], []]);
  });

  it('refuses what it does not know, and a side that has no reference, each with what to do', async () => {
    const { photo } = compared.question;
    const ask = (more: object) => opened.ask('/api/comparisons', { item_id: 'tern', photo, side: 'board-front', ...more });
    expect(await refused(await ask({ item_id: 'gone' }))).toEqual([404, 'no-such-item']);
    expect(await refused(await ask({ photo: '0'.repeat(64) }))).toEqual([404, 'no-such-photo']);
    expect(await refused(await ask({ side: 'board-back' }))).toEqual([409, 'no-reference']);
    expect(await refused(await opened.ask(`/api/comparisons/${'0'.repeat(64)}`))).toEqual([404, 'no-such-comparison']);
    expect(await refused(await opened.ask('/api/models/gone/references'))).toEqual([404, 'no-such-model']);
  });
});
