/** Bodies of requests that must be refused, as text. */
export function hostileRequests(): readonly { readonly name: string; readonly text: string }[] {
  const event = (rest: string): string => `{"events":[{"kind":"note-written",${rest}}]}`;
  const deep = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth);
  return [
    { name: 'no JSON', text: '{"events":[' },
    { name: 'null', text: 'null' },
    { name: 'nothing', text: '' },
    { name: 'a list', text: '[]' },
    { name: 'events that are none', text: '{"events":[1,null,"x",[],{}]}' },
    { name: 'a body that is nested without end', text: event(`"body":${deep(100_000)}`) },
    { name: 'a newer event that is nested without end', text: event(`"version":9,"body":${deep(100_000)}`) },
    { name: 'a key that would reach the prototype', text: event('"body":{"__proto__":{"text":"x"}}') },
    { name: 'a kind that is a name of every object', text: '{"events":[{"kind":"constructor","body":{}},{"kind":"__proto__","body":{}}]}' },
    { name: 'a text of ten megabytes', text: event(`"body":{"text":"${'x'.repeat(10_000_000)}"}`) },
    { name: 'a hundred thousand events', text: `{"events":[${'{},'.repeat(99_999)}{}]}` },
    {
      name: 'a number of no size',
      text: '{"events":[{"kind":"reading-taken","body":{"item_id":"x","point":"y","mode":"volts","value":1e999}}]}',
    },
    { name: 'half a letter', text: event('"body":{"text":"\\ud800","item_id":"nobody"}') },
    { name: 'a time that is none', text: event('"at":"2026-99-99T99:99:99Z","body":{"text":"x"}') },
    { name: 'an id that is none', text: event('"id":"1; DROP TABLE event","body":{"text":"x"}') },
    { name: 'a device with a new line', text: event('"device":"a\\nb","body":{"text":"x"}') },
  ];
}
