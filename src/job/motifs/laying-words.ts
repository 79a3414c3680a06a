// What is said of laying film wherever it is told, on the job sheet.

export const backingOff = 'take the backing off';

export const carrierOff = 'lift the carrier flat back over itself';
