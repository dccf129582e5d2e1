/** Thrown inside work that was stopped; nothing is wrong. */
export class Stopped extends Error {}
