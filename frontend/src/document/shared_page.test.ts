// @vitest-environment jsdom
import fc from "fast-check";
import { expect, test } from "vitest";
import { documentIn, isPage, putDocumentIn } from "./shared_page";

const PAGE = "<!doctype html><html><body><script>let a = '</body>';</script><p>tide</p></body></html>";

test("a page gives back the very document that was put in, whatever its texts say", () => {
  const texts = fc.oneof(fc.string(), fc.constantFrom("</script>", "</body>", "<!--", '<script type="application/json" id="pegwright-document">{}</script>'));
  fc.assert(
    fc.property(fc.dictionary(texts, texts), (texts) => {
      const document = JSON.parse(JSON.stringify({ pegwright: 3, title: "Ebb line", texts })) as object;
      expect(documentIn(putDocumentIn(PAGE, document))).toEqual(document);
      const shown = new DOMParser().parseFromString(putDocumentIn(PAGE, document), "text/html");
      expect(shown.querySelectorAll("script")).toHaveLength(2);
      expect(shown.body.textContent).toContain("tide");
    }),
  );
});

test("a document is itself; a page without one, and words, carry none", () => {
  expect(documentIn(' {"pegwright": 3}')).toEqual({ pegwright: 3 });
  expect(documentIn(PAGE)).toBeNull();
  expect(documentIn("Stretch a red band from A1 to A2.")).toBeNull();
  expect(() => documentIn("{ not JSON")).toThrow(SyntaxError);
  expect([isPage(PAGE), isPage("Stretch a band")]).toEqual([true, false]);
});
