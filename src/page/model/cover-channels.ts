// A cover holds three layers of film, one in each of its colours.

export const channels = ['r', 'g', 'b'] as const;
export type Channel = (typeof channels)[number];
