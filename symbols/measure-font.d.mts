export function advances(bytes: Uint8Array): ReadonlyMap<number, number>;
export function metricsModule(): string;
