/**
 * Words of German that may not stand.
 */

import type { LanguageWords } from "./language.js";

/** German. Umlauts stand for themselves and for their spelling with e. */
export const GERMAN: LanguageWords = {
  language: "de",
  bans: {
    vague: [
      "öko(?!nom)~",
      "grün(?:e|er|es|en|em|ere[rsnm]?|sten?|ster|stes)?",
      "umwelt (?:freundlich|gerecht|bewusst|schonend|verträglich|positiv|neutral)~",
      "natur (?:freundlich|schonend|verträglich|nah)~",
      "klima (?:freundlich|schonend|bewusst|gerecht|verträglich)~",
      "ressourcen schonend~",
      "schon(?:t|en|end) (?:die umwelt|das klima|die natur|ressourcen)",
      "(?:gut|besser) für (?:die umwelt|das klima|die natur)",
      "planet(?:en)?",
    ],
    sustainable: ["nachhaltig~"],
    "climate-neutral": [
      "klima (?:neutral|positiv|negativ|kompensiert)~",
      "(?:co2|carbon|kohlenstoff|treibhausgas) (?:neutral|positiv|negativ|frei|kompensiert)~",
      "netto null~",
    ],
    "low-carbon": ["(?:co2|kohlenstoff|emissions) (?:arm|reduziert|sparend)~"],
    "energy-efficient": ["energie (?:effizient|sparend|sparsam)~"],
    clean: ["sauber(?:e|er|es|en|em|ere[rsnm]?|sten?)?", "rein (?:pflanzlich|natürlich)~"],
    harmless: [
      "ungiftig~",
      "nicht (?:giftig|toxisch|schädlich)~",
      "unschädlich~",
      "harmlos~",
      "unbedenklich~",
    ],
    "free-of": [
      "(?:wasser|chemie|chemikalien|schadstoff|formaldehyd|gift|abwasser|emissions|plastik) (?:los|frei)(?:e|er|es|en|em)?",
      "(?:ganz )?ohne (?:wasser|chemie|chemikalien|abwasser|schadstoffe)",
      "frei von (?:chemikalien|schadstoffen|giften)",
    ],
    zero: [
      "null (?:abfall|wasser|abwasser|emission|auswirkung|prozent abwasser)~",
      "zero (?:waste|water|emission)~",
      "abfall frei(?:e|er|es|en|em)?",
    ],
    degradable: ["(?:bio|biologisch) abbaubar~", "kompostierbar~"],
    natural: [
      "bio basiert~",
      "natürlich(?:e|er|es|en|em)",
      "bio (?:baumwolle|stoff|druck|farbe|tinte|qualität)~",
      "pflanzenbasiert~",
    ],
    conscious: [
      "verantwortungs (?:voll|bewusst)~",
      "bewusst(?:e|er|es|en)? (?:mode|konsum|drucken|produzier|produkt)~",
    ],
    best: ["best(?:e|er|es|en|em)", "weltweit führend~", "branchenführend~"],
    guaranteed: ["garantier(?:t|te|ter|tes|ten|en)"],
    conformity: ["(?:(?:reach|iso #|rechts|gesetzes|normen) )?konform(?:e|er|es|en|em|ität)?"],
    footprint: [
      "(?:(?:wasser|co2|carbon|kohlenstoff|klima|umwelt|ökologische[rn]?) )?fußabdrücke?n?s?",
    ],
    equivalent: [
      "schwimm (?:bad|bäder|becken)~",
      "swimming pools?",
      "badewanne~",
      "# (?:\\p{L}+ )?(?:bäumen?|autos?|haushalten?|duschen|flügen?|flaschen|fußballfeldern?|elefanten)",
      "(?:so viel|entspricht|entsprechen|genug für|reicht für)…(?:baum|bäumen?|autos?|haushalte?n?|duschen?|flüge?n?|flaschen?|fußballfelder?n?|elefanten)",
      "bäume (?:gepflanzt|pflanzen)",
    ],
    seal: ["zertifiziert~", "(?:güte|öko|umwelt)siegel~", "umweltzeichen"],
    forecast: ["(?:wird|werden)…(?:sparen|einsparen|senken|reduzieren|vermindern|vermeiden)"],
    "same-quality": ["(?:gleich|selb|identisch)(?:e|er|en) qualität"],
  },
  spared: [
    "nachhaltigkeits (?:bericht|erklärung|beauftragt|kodex)~",
    "best(?:e|en|er) verfügbar(?:e|en|er) techniken?",
    "best(?:en) (?:dank|grüßen?)",
    "grün(?:e|er|es|en|em)? (?:farb|ton|garn|kanal|faden)~",
    "natürlich(?:e|er|es|en) (?:faser|logarithm|zahl|person|konvektion)~",
    "wasser frei(?:e|er|es|en|em)? (?:soda|natrium|salz)~",
    "sauber(?:e|es|er|en)? (?:wasser|dampf|walze)~",
    "kein(?:e|en)? (?:wasser|co2|carbon) fußabdruck",
  ],
  comparing: [
    "(?:weniger|geringer(?:e|er|en)|niedriger(?:e|er|en)|reduziert(?:e|er|en)|minimal(?:e|er|en)) (?:prozess|frisch)?(?:wasser|energie|strom|dampf|gas|abwasser|co2|emission|chemikalien|abfall)~",
    "(?:spart|sparen|senkt|senken|reduziert|reduzieren) (?:#%? )?(?:den |die |das )?(?:wasser|energie|strom|dampf|gas|emission|abwasser|chemikalien)~",
    "(?:wasser|energie|dampf) (?:einsparung|ersparnis)~",
  ],
  basis: ["als", "gegenüber", "verglichen", "vergleich", "statt", "anstelle", "gegen"],
  frequent: ["der", "die", "das", "und", "ist", "mit", "für", "von", "nicht", "wir", "eine", "auf"],
};
