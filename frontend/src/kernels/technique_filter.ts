/** Which techniques fit what a maker wants; what is left open is wanted any way. */
import type { Technique } from "../schema/answers";

export interface TechniqueWish {
  query: string;
  /** Width in cm. */
  leastCm: number | null;
  mostCm: number | null;
  colours: number | null;
  /** A beginner's minutes for some 15 cm. */
  minutes: number | null;
  /** The most difficult level that will do. */
  level: Technique["level"] | null;
}

export const ANYTHING: TechniqueWish = { query: "", leastCm: null, mostCm: null, colours: null, minutes: null, level: null };
export const LEVELS = ["basic", "easy", "intermediate", "complex"] as const;

export function fitsWish(one: Technique, wish: TechniqueWish): boolean {
  const width = one.width_mm / 10;
  const words = wish.query.toLocaleLowerCase().split(/\s+/).filter(Boolean);
  const said = `${one.title} ${one.group} ${one.level_words}`.toLocaleLowerCase();
  return (
    words.every((word) => said.includes(word)) &&
    (wish.leastCm === null || width >= wish.leastCm) &&
    (wish.mostCm === null || width <= wish.mostCm) &&
    (wish.colours === null || one.colours === wish.colours) &&
    (wish.minutes === null || one.minutes <= wish.minutes) &&
    (wish.level === null || LEVELS.indexOf(one.level) <= LEVELS.indexOf(wish.level))
  );
}
