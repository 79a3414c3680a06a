// Angles: radians within, degrees for people.

export const degrees = (radians: number): number => (radians * 180) / Math.PI;
