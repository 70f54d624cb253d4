import { describe, expect, it } from 'vitest';
import { brokenLaws } from '../../core/planning/index.ts';
import { createAdvisor } from '../advice/index.ts';
import { benchOf, bought, moved, saw } from '../advice/testing/bench-of.ts';
import { deadProcessor, goodUnit, type Steps } from '../advice/testing/files.ts';
import { pocketModels } from '../advice/testing/pocket-model.ts';
import type { PlanWorker } from '../ports.ts';
import { PlanView } from '../views/index.ts';
import { runPlanJob } from './jobs.ts';
import { openPlanRoom } from './plan-room.ts';
import { plainWorker } from './testing/plain-worker.ts';

const BOARD_TO_MOVE: Steps = [
  ...bought('lot', 'marsh-lane', ['u1', 'u2', 'u3']),
  ...goodUnit('u3'),
  ...deadProcessor('u1'),
  ...goodUnit('u2'),
  saw('u3', 'display', 'cracked'),
  moved('b3', 'board', 'u3', null),
];

function roomOf(worker: PlanWorker = plainWorker()) {
  const logged: string[] = [];
  const advisor = createAdvisor(pocketModels());
  const room = openPlanRoom(worker, (sentence) => void logged.push(sentence));
  return { room, logged, desk: (steps: Steps) => advisor.desk(benchOf(steps)) };
}

describe('the plan of a bench', () => {
  it('is being made at first, and then stands with all that is said of it', async () => {
    const { room, desk, logged } = roomOf();
    const now = desk(BOARD_TO_MOVE);
    expect(room.view(now)).toMatchObject({ stage: 'making', plan: null });
    const view = await room.settled(now);
    expect(PlanView.parse(view)).toEqual(view);
    expect(view.stage).toBe('ready');
    expect(view.plan!.items.map(({ item_id: id }) => id).sort()).toEqual(['b3', 'u1', 'u2', 'u3']);
    expect(view.plan!.profit.mean_minor).toBeGreaterThanOrEqual(view.plan!.alone_minor);
    expect(view.plan!.profit.mean_minor).toBeGreaterThan(view.plan!.scrap_minor);
    expect(view.plan!.donors[0]!.worth_minor).toBeGreaterThan(0);
    expect([view.broken, logged]).toEqual([[], []]);
    const made = (await room.made(now))!;
    expect(brokenLaws(made.from.pile, made.plan!)).toEqual([]);
  });

  it('moves a whole board into the unit whose own is doubtful, and says so with the chances', async () => {
    const { room, desk } = roomOf();
    const { plan } = await room.settled(desk(BOARD_TO_MOVE));
    const dead = plan!.items.find(({ item_id: id }) => id === 'u1')!;
    expect(dead.does).toBe('open');
    expect(dead.finished_chance).toBeGreaterThan(0.6);
    const moves = dead.why.filter((line) => line.includes('goes in whole'));
    expect(moves).toHaveLength(1);
    expect(moves[0]).toMatch(/^Its board would work with .* %; the board of #\d+ .* works with 9\d % and goes in whole/);
    expect(plan!.items.find(({ item_id: id }) => id === 'b3')!.donor_chance).toBeGreaterThan(0.5);
  });

  it('says nothing of a plan where nothing waits for one', async () => {
    const { room, desk } = roomOf();
    expect(await room.settled(desk([]))).toMatchObject({ stage: 'nothing', plan: null, changes: [] });
  });

  it('is the same for the same log, and not made anew when nothing that matters has changed', async () => {
    let made = 0;
    const counting: PlanWorker = { ...plainWorker(), run: (job) => ((made += 1), runPlanJob(job)) };
    const { room, desk } = roomOf(counting);
    const first = await room.settled(desk(BOARD_TO_MOVE));
    const noted = await room.settled(desk([...BOARD_TO_MOVE, ['note-written', { item_id: 'u1', text: 'a smell of rain' }]]));
    expect(made).toBe(1);
    expect(noted.plan!.items).toEqual(first.plan!.items);
    expect((await roomOf().room.settled(desk(BOARD_TO_MOVE))).plan).toEqual(first.plan);
  });

  it('is made anew after what matters, and says what changed and why', async () => {
    const { room, desk } = roomOf();
    await room.settled(desk(BOARD_TO_MOVE));
    const { changes } = await room.settled(desk([...BOARD_TO_MOVE, ['scrapped', { item_id: 'b3', reason: 'dropped' }]]));
    expect(changes.some((line) => line.includes('left the plan, because it is not in the pile any more'))).toBe(true);
    expect(changes.at(-1)).toMatch(/^Expected profit fell by/);
  });

  it('lets the person decide otherwise, at a cost that is said before and counted after', async () => {
    const { room, desk } = roomOf();
    const question = { item_id: 'u1', does: 'as-is' as const };
    const regret = (await room.regret(desk(BOARD_TO_MOVE), question))!;
    expect(regret).toBeGreaterThan(500);
    const chosen: Steps = [...BOARD_TO_MOVE, ['plan-chosen', { ...question, regret_minor: Math.round(regret), reason: 'no time' }]];
    const { plan } = await room.settled(desk(chosen));
    const unit = plan!.items.find(({ item_id: id }) => id === 'u1')!;
    expect(unit.does).toBe('as-is');
    expect(unit.choices).toMatchObject([{ said: 'Sell it as it is', regret_minor: Math.round(regret), reason: 'no time', counts: true }]);
    expect(plan).toMatchObject({ keeps_choices: true });
    expect(plan!.regret_minor).toBeGreaterThan(500);
    const back = await room.settled(desk([...chosen, ['plan-chosen', { item_id: 'u1', does: 'as-planned' }]]));
    expect(back.plan!.items.find(({ item_id: id }) => id === 'u1')!.does).toBe('open');
    expect(await room.regret(desk(BOARD_TO_MOVE), { item_id: 'nobody', does: 'open' })).toBeNull();
    expect(await room.regret(desk(BOARD_TO_MOVE), { item_id: 'u1', slot: 'board', remedy: 'sing to it' })).toBeNull();
    expect(await room.regret(desk(BOARD_TO_MOVE), { item_id: 'u2', does: 'keep' })).toBeGreaterThan(0);
  });

  it('shows no plan that breaks a law, and reports it', async () => {
    const overspent: PlanWorker = {
      ...plainWorker(),
      run: async (job) => {
        const answer = await runPlanJob(job);
        return (typeof answer === 'object' ? { ...answer, plan: null, broken: ['money is spent twice'] } : answer) as typeof answer;
      },
    };
    const { room, desk, logged } = roomOf(overspent);
    expect(await room.settled(desk(BOARD_TO_MOVE))).toMatchObject({ plan: null, broken: ['money is spent twice'] });
    expect(logged).toEqual(['A plan broke its laws and is not shown.']);
  });

  it('leaves the advice unit by unit where it cannot be made', async () => {
    const broken: PlanWorker = { run: () => Promise.reject(new Error('no thread')), close: async () => undefined };
    const { room, desk, logged } = roomOf(broken);
    expect(await room.settled(desk(BOARD_TO_MOVE))).toMatchObject({ stage: 'failed', plan: null });
    expect(logged).toHaveLength(1);
  });

  it('does not change work that has begun unless the change pays for the switch', async () => {
    const jobs: Parameters<PlanWorker['run']>[0][] = [];
    const spying: PlanWorker = { ...plainWorker(), run: (job) => (jobs.push(job), runPlanJob(job)) };
    const { room, desk } = roomOf(spying);
    const open: Steps = [...BOARD_TO_MOVE, ['opened-to', { item_id: 'u2', stage: 'open', minutes: 5 }]];
    await room.settled(desk(open));
    const before = (await room.made(desk(open)))!;
    const remedies = before.plan!.items.find(({ item }) => item === 'u2')!.remedies;
    await room.settled(desk([...open, ['scrapped', { item_id: 'b3', reason: 'dropped' }]]));
    const second = jobs.at(-1)!;
    const started = second.pile.items
      .find(({ id }) => id === 'u2')!
      .assemblies.flatMap(({ slot, started: begun }) => (begun ? [[slot, begun.remedy]] : []));
    expect(started).toEqual(Object.entries(remedies));
  });
});
