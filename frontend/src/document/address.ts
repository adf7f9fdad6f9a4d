/** Peg addresses, as in B3: a row letter (A … Z, AA … ZZ) and a number from 1. */
export interface Address {
  row: number;
  number: number;
}

const FORM = /^([A-Z]{1,2})([1-9][0-9]{0,4})$/;

export function parseAddress(text: string): Address | null {
  const match = FORM.exec(text);
  if (!match) return null;
  let row = 0;
  for (const letter of match[1]!) row = row * 26 + letter.charCodeAt(0) - 64;
  return { row: row - 1, number: Number(match[2]) };
}

export function rowLetter(row: number): string {
  return row < 26
    ? String.fromCharCode(65 + row)
    : String.fromCharCode(64 + Math.floor(row / 26)) + String.fromCharCode(65 + (row % 26));
}

/** Return the address as text, or null where it lies before row A, past ZZ, or before peg 1. */
export function printAddress({ row, number }: Address): string | null {
  return row < 0 || row > 701 || number < 1 ? null : rowLetter(row) + number;
}
