import table from '../../../shared/radio.json' with { type: 'json' };

/** Centre of a Wi-Fi channel in MHz: 2407 + 5 n for 1 to 13, 2484 for 14, 5000 + 5 n from 32 on; undefined for others. */
export const wifiCentreMhz = (channel: number): number | undefined => {
  if (!Number.isInteger(channel)) return undefined;
  if (channel >= 1 && channel <= 13) return 2407 + 5 * channel;
  if (channel === 14) return 2484;
  return channel >= 32 && channel <= 177 ? 5000 + 5 * channel : undefined;
};

/** Centre in MHz of a channel of short-range low-energy radio: 2402 + 2 k, k from 0 to 39. */
export const lowEnergyCentreMhz = (k: number): number | undefined =>
  Number.isInteger(k) && k >= 0 && k <= 39 ? 2402 + 2 * k : undefined;

/** The 79 hop channels of 1 MHz from 2402 MHz on. */
const FIRST_HOP_MHZ = 2402;
const HOPS = 79;

/** Hop channels of 2.4 GHz that none of these Wi-Fi channels covers, by their centres in MHz. */
export const freeHopsMhz = (channels: readonly number[]): readonly number[] => {
  const half = table.wifi.widthMhz / 2;
  const busy = channels.map(wifiCentreMhz).filter((c): c is number => c !== undefined);
  return Array.from({ length: HOPS }, (_, i) => FIRST_HOP_MHZ + i).filter((f) =>
    busy.every((c) => f < c - half || f > c + half),
  );
};

/** Share of a band in MHz that Wi-Fi leaves free: of the hop channels at 2.4 GHz, of its width elsewhere. */
export const freeShare = (fromMhz: number, toMhz: number, channels: readonly number[]): number => {
  if (fromMhz < 2484 && toMhz > 2400) return freeHopsMhz(channels).length / HOPS;
  const half = table.wifi.widthMhz / 2;
  const steps = Math.max(1, Math.round(toMhz - fromMhz));
  const busy = channels.map(wifiCentreMhz).filter((c): c is number => c !== undefined);
  let free = 0;
  for (let i = 0; i < steps; i++) {
    const f = fromMhz + i + 0.5;
    if (busy.every((c) => Math.abs(f - c) > half)) free++;
  }
  return free / steps;
};

/** What busy channels cost a hopping link in dB: −10 · log of the share that is free. Never more than 20 dB. */
export const wifiDb = (share: number): number => (share > 0.01 ? -10 * Math.log10(share) : 20);

export const wifiSource: string = table.wifi.source;
export const assumedWifi: readonly number[] = table.wifi.assumedChannels;
