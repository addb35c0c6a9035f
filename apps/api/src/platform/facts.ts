/** Tables whose rows the chain holds. */
export const FACT_TABLES = ['fire_check', 'food_entry', 'wood_move'] as const;
export type FactTable = (typeof FACT_TABLES)[number];

/**
 * What stands for a row in the chain, as PostgreSQL reckons it: SHA-256 (FIPS 180-4) of the row as jsonb writes it, without
 * what is null, so that a column added later changes nothing. The session's time zone must be UTC.
 */
export const factDigest = (row: string): string => `sha256(convert_to(jsonb_strip_nulls(to_jsonb(${row}))::text, 'UTF8'))`;
