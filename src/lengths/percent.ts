// Shares in words.
/** A share in words: 0.125 is "12.5 %". */
export const inPercent = (share: number, places = 1): string => `${(share * 100).toFixed(places)} %`;
