/** What the maker prefers, remembered by the browser: the language, the working hand, whether the tour is done with. */
import { LANGUAGES, speak, spoken, type Language } from "../words/words.svelte";

const KEEP = "pegwright-view";

interface Kept {
  language?: Language;
  left?: boolean;
  toured?: boolean;
}

class Preferences {
  /** Worked with the left hand: panels, cards and the loom on its side lie the other way round. */
  left = $state(false);
  /** The tour was gone through, or left. */
  toured = $state(false);

  /** Take up what was remembered; the language is the browser's until another is chosen. */
  load(): void {
    let kept: Kept = {};
    try {
      kept = JSON.parse(localStorage.getItem(KEEP) ?? "{}") as Kept;
    } catch {
      localStorage.removeItem(KEEP);
    }
    this.left = kept.left ?? false;
    this.toured = kept.toured ?? false;
    const own = navigator.language.slice(0, 2);
    speak(kept.language ?? (own in LANGUAGES ? (own as Language) : "en"));
  }

  keep(): void {
    const kept: Kept = { language: spoken.language, left: this.left, toured: this.toured };
    localStorage.setItem(KEEP, JSON.stringify(kept));
  }
}

export const preferences = new Preferences();
