import { expect, it } from 'vitest';
import { balanceAgainstSolver } from '../support/balance-laws.ts';

it('power-balance: 120 random rigs of up to 16 loads × 4 setups come out equal to a mixed-integer solver’s answer', {
  timeout: 900_000,
}, async () => {
  await expect(balanceAgainstSolver(120, 2)).resolves.toBeUndefined();
});
