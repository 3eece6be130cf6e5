import { describe, expect, it } from "vitest";
import { asItStands } from "../../../src/report/wording/fold.js";
import { guessLanguages } from "../../../src/report/wording/guess.js";
import { LANGUAGES } from "../../../src/report/wording/language.js";

describe("guessLanguages", () => {
  it.each([
    ["The water of the wash is metered and the lots are weighed with care.", ["en"]],
    ["Das Wasser der Wäsche ist gemessen und wir wiegen die Partien mit der Waage.", ["de", "en"]],
    ["L'eau est mesurée et nous pesons les lots avec la balance dans une salle.", ["fr", "en"]],
    ["L'acqua è misurata e gli ordini sono pesati con la bilancia nel reparto.", ["it", "en"]],
    ["El agua se mide y los lotes se pesan con la balanza en una sala del taller.", ["es", "en"]],
    ["A água é medida e os lotes são pesados com uma balança; não há falta.", ["pt", "en"]],
    ["Su ölçülür ve parti bir terazi ile tartılır; bu daha az olan içindir.", ["tr", "en"]],
  ])("tells %j", (text, languages) => {
    expect(guessLanguages(asItStands(text))).toEqual(languages);
  });

  it("reads a text of few words in every language", () => {
    expect(guessLanguages(asItStands("Klimaneutral!"))).toEqual(LANGUAGES);
  });
});
