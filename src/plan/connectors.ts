import table from '../../shared/connectors.json' with { type: 'json' };

/** One row of the connector table. `legs` counts live conductors; `takes` lists other plugs its outlet accepts. */
export interface Connector {
  readonly id: string;
  readonly name: string;
  readonly ratingA: number;
  readonly voltsV: number;
  readonly legs: number;
  readonly neutral: boolean;
  readonly takes: readonly string[];
  readonly source: string;
}

const rows: ReadonlyMap<string, Connector> = new Map(table.rows.map((r) => [r.id, r]));

/** All connectors, in the table's order. */
export const connectors: readonly Connector[] = table.rows;

export const connector = (id: string): Connector | undefined => rows.get(id);

/** Whether a plug goes into an outlet. Connectors the table does not know mate only with their own kind. */
export const mates = (outlet: string, plug: string): boolean =>
  outlet === plug || (rows.get(outlet)?.takes.includes(plug) ?? false);
