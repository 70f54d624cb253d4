export { checkEvent } from './check-event.ts';
export { RULE_CODES, type Objection, type RuleCode, type RuleContext } from './rule.ts';
