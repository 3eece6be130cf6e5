/**
 * Words of Italian that may not stand.
 */

import type { LanguageWords } from "./language.js";

/** Italian. */
export const ITALIAN: LanguageWords = {
  language: "it",
  bans: {
    vague: [
      "verd[ei]",
      "eco",
      "eco (?:friendly|compatibil|responsabil|stamp|tessut|tessil|prodott)~",
      "ecologic~",
      "rispett(?:a|ano|iamo|os[oaie]) (?:l'|dell'|la |della |il |del )?(?:ambiente|natura|pianeta|clima)",
      "amic(?:o|a|i|he) (?:dell'ambiente|della natura|del pianeta|del clima)",
      "(?:buon[oa]?|meglio) per (?:l'ambiente|la natura|il clima)",
      "pianeta",
    ],
    sustainable: ["(?:eco )?sostenibil~"],
    "climate-neutral": [
      "(?:climaticamente|carbonicamente) neutr~",
      "neutr(?:o|a|i|e|ale|ali) (?:per il clima|in termini di carbonio|per la co2)",
      "neutralità (?:climatica|carbonica|di carbonio)",
      "(?:carbonio|carbon|co2|clima) (?:neutr|positiv|negativ)~",
      "(?:zero emissioni nette|emissioni nette zero|emissioni nette pari a zero)",
    ],
    "low-carbon": [
      "(?:a )?bass[oae] (?:emissioni?|impatto|contenuto di carbonio|tenore di carbonio)~",
    ],
    "energy-efficient": [
      "energeticamente efficient[ei]",
      "efficient[ei] (?:in termini )?(?:energetic|di energia)~",
      "a (?:basso consumo|risparmio) energetic[oi]",
    ],
    clean: ["(?:più )?pulit[oaie]", "pur[oai]"],
    harmless: ["innocu[oaie]", "atossic(?:o|a|i|he)", "non (?:tossic|inquinant|nociv)~"],
    "free-of": [
      "senz(?:a|') (?:acqua|sostanze chimiche|prodotti chimici|chimica|formaldeide|scarichi|emissioni|rifiuti)",
      "priv[oaie] di (?:sostanze chimiche|sostanze tossiche|formaldeide|emissioni)",
    ],
    zero: [
      "zero (?:rifiuti|acqua|scarichi|emissioni|impatto|sprechi)",
      "(?:rifiuti|emissioni|impatto|scarichi|sprechi) zero",
    ],
    degradable: ["bio degradabil~", "compostabil[ei]"],
    natural: ["bio basat~", "natural[ei]", "biologic(?:o|a|i|he)", "bio"],
    conscious: ["consapevol(?:e|i|mente)", "responsabil(?:e|i|mente)"],
    best: [
      "(?:il|la|i|le) miglior[ei]?",
      "(?:il|la|i|le) più (?:verd|pulit|ecologic|sostenibil)~",
      "leader mondial[ei]",
    ],
    guaranteed: ["garanti(?:to|ta|ti|te|sce|scono|amo)"],
    conformity: ["conform[ei]"],
    footprint: [
      "impront[ae] (?:idric|carbonic|di carbonio|ecologic|ambiental|climatic)~",
      "carbon footprint",
    ],
    equivalent: [
      "piscin[ae]",
      "vasc(?:a|he) da bagno",
      "# (?:\\p{L}+ )?(?:alberi|auto|automobili|famiglie|docce|bottiglie|voli|campi da calcio)",
      "(?:equival(?:e|gono|ente|enti)|corrispond(?:e|ono|ente)|pari a|quanto)…(?:alber[oi]|automobil[ei]|auto|famigli[ae]|docc(?:ia|e)|bottigli[ae]|vol[oi]|camp[oi] da calcio)",
      "piant(?:are|iamo|ato|ati)…alber[oi]",
    ],
    seal: ["certificat[oaie]", "march(?:io|i) di qualità", "etichetta ecologica"],
    forecast: ["(?:risparmier|eviter|ridurr|diminuir)(?:à|anno|emo)"],
    "same-quality": ["stessa qualità", "qualità identica"],
  },
  spared: [
    "(?:report|rapporto|bilancio|responsabile|rendicontazione|dichiarazione) (?:di|della) sostenibilità",
    "responsabil[ei] (?:di|del|della|dei|delle|dell'\\p{L}+)",
    "(?:le )?migliori tecniche disponibili",
    "gas naturale",
    "fibr[ae] natural[ei]",
    "logaritm[oi] natural[ei]",
    "pur[oa] (?:cotone|lana|seta|lino|lana vergine)",
    "(?:colore|tinta|filo) verde",
    "acqua pulita",
    "(?:richiesta|domanda) biologica di ossigeno",
    "non (?:è )?un'impronta (?:idrica|di carbonio)",
  ],
  comparing: [
    "(?:meno|minor[ei]?) (?:acqua|energia|elettricità|vapore|gas|co2|emissioni|scarichi|prodotti chimici|rifiuti)",
    "(?:risparmi|ridu)(?:a|ano|amo|ce|cono|ciamo) (?:#%? )?(?:di )?(?:l'|il |i |le )?(?:acqua|energia|consumo|consumi|emissioni|scarichi|vapore)",
    "risparmio (?:idrico|energetico|di acqua|di energia)",
  ],
  basis: ["rispetto", "che", "confronto", "invece", "contro", "confrontat[oaie]", "del", "della"],
  frequent: ["il", "la", "gli", "e", "è", "con", "per", "che", "nostra", "della", "nel", "sono"],
  notEnglish: ["pure"],
};
