/** A seller whose name was left open stands in the log as this. */
export const sellerName = (typed: string): string => typed.trim() || 'an unnamed seller';
