/** The page's words, by key, in the language that is set. */
import { FluentBundle, FluentResource, type FluentVariable } from "@fluent/bundle";
import de from "./de.ftl?raw";
import en from "./en.ftl?raw";
import es from "./es.ftl?raw";

export const LANGUAGES = { en: "English", es: "Español", de: "Deutsch" } as const;
export type Language = keyof typeof LANGUAGES;

function bundle(language: Language, text: string): FluentBundle {
  const made = new FluentBundle(language, { useIsolating: false });
  const errors = made.addResource(new FluentResource(text));
  if (errors.length) throw errors[0];
  return made;
}

const BUNDLES: Record<Language, FluentBundle> = { en: bundle("en", en), es: bundle("es", es), de: bundle("de", de) };

export const spoken = $state<{ language: Language }>({ language: "en" });

export function speak(language: Language): void {
  spoken.language = language;
  document.documentElement.lang = language;
}

/** Say the words of a key. A key without words comes out as itself, and a test fails. */
export function t(key: string, values?: Record<string, FluentVariable>): string {
  const from = BUNDLES[spoken.language];
  const message = from.getMessage(key) ?? BUNDLES.en.getMessage(key);
  return message?.value ? from.formatPattern(message.value, values ?? null) : key;
}

/** The colours that pieces begin with, by what they are called in each language. */
const TINTS = ["tint-slate-blue", "tint-foam-white", "tint-buoy-red", "tint-lamp-yellow", "tint-weed-green", "tint-sand", "tint-tar-black", "tint-stone-grey"];
const TINT_KEYS = new Map(
  Object.values(BUNDLES).flatMap((from) => TINTS.map((key) => [from.formatPattern(from.getMessage(key)!.value!).toLocaleLowerCase(), key] as const)),
);

/** What a word of the page reads in a language. */
export function wordIn(language: Language, key: string): string {
  return BUNDLES[language].formatPattern(BUNDLES[language].getMessage(key)!.value!);
}

/** The key of a colour that pieces begin with, by its name in any language. */
export function tintKeyOf(name: string): string | undefined {
  return TINT_KEYS.get(name.toLocaleLowerCase());
}

/** A colour's name in the page's language, where it is one that pieces begin with; any other is the maker's own. */
export function colourName(name: string): string {
  const key = tintKeyOf(name);
  return key ? t(key) : name;
}

/** A number with so many decimals, as it is written in the page's language. */
export function decimals(value: number, digits: number): string {
  return value.toLocaleString(spoken.language, { minimumFractionDigits: digits, maximumFractionDigits: digits });
}
