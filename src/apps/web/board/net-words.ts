/** "ground" for net "0", else the net as it is printed, in capitals. */
export const netWords = (net: string): string => (net === '0' ? 'ground' : net.toUpperCase());
