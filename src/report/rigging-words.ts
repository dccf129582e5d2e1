export { formatFactor, formatKg, formatNewtons, formatWind } from '../engines/rigging/index.ts';
