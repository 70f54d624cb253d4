/**
 * A text and the claims expected of it: `sound=fails` of a function, `shell:cracked` of a place, `untested`; with `?` when hedged, `!` when it contradicts another, and
 * `#2 ` before what is said of the second unit only.
 */
export type Sentence = readonly [text: string, claims: readonly string[]];
