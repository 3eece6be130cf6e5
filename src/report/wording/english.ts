/**
 * Words of English that may not stand.
 */

import type { LanguageWords } from "./language.js";

/** English. */
export const ENGLISH: LanguageWords = {
  language: "en",
  bans: {
    vague: [
      "green(?:er|est|ness)?",
      "eco",
      "eco (?:friendly|conscious|safe|aware|logo|print|textile|fabric|ink|dye|product|fashion)~",
      "ecological(?:ly)?",
      "(?:environmental(?:ly)?|environment|nature|earth|ocean|planet) (?:friendly|safe|correct|sound|responsible|benign|kind|conscious|positive)",
      "planet",
      "nature's friend",
      "climate (?:friendly|conscious|smart)",
      "(?:co2|carbon) friendly",
      "gentle on the (?:environment|climate)",
      "(?:good|better|kind|kinder) (?:for|to) the (?:environment|climate)",
    ],
    sustainable: ["sustainab~"],
    "climate-neutral": [
      "climate (?:neutral|positive|negative)~",
      "(?:carbon|co2) (?:neutral|positive|negative|free|compensated|offset)~",
      "net zero",
      "climate compensated",
    ],
    "low-carbon": ["(?:ultra )?low (?:carbon|co2|emissions?|impact)"],
    "energy-efficient": ["energy (?:efficient|saving|smart)(?:ly)?"],
    clean: ["clean(?:er|est)?", "pure(?:r|st)?"],
    harmless: ["non (?:polluting|toxic|hazardous|harmful)", "harmless(?:ly)?", "toxin free"],
    "free-of": [
      "(?:chemicals?|formaldehyde|water|effluent|emissions?|pollution|waste) free",
      "free (?:of|from) (?:chemicals|toxins|pollution|effluent)",
      "without (?:any )?chemicals",
      "waterless(?:ly)?",
    ],
    zero: ["zero (?:waste|water|effluent|discharge|emissions?|impact|pollution|carbon)"],
    degradable: ["bio degrad(?:able|ability|es?)", "compostable"],
    natural: ["bio based", "natural(?:ly)?", "plant based"],
    conscious: ["conscious(?:ly|ness)?", "responsibl[ey]"],
    best: ["best", "unrivalled", "(?:world|industry) leading"],
    guaranteed: ["guarantee(?:d|s)?"],
    conformity: ["compliant", "complies with (?:reach|the law|iso #)"],
    footprint: ["(?:water|carbon|environmental|ecological|climate) foot prints?"],
    equivalent: [
      "(?:olympic )?swimming pools?",
      "olympic (?:size )?pools?",
      "bath tubs?",
      "cars? (?:off|taken off|removed from) (?:the )?roads?",
      "# (?:\\p{L}+ )?(?:trees|cars|pools|households|homes|showers|flights|bottles|football pitches|elephants)",
      "(?:equivalent|equal|equals|equates|corresponds?|as much as|enough|same as)…(?:pools?|cars?|trees?|households?|homes?|showers?|bottles?|flights?|football pitch(?:es)?|elephants?|smartphones?|light bulbs?)",
      "(?:plant|planting|planted|save|saves|saved|saving) (?:# )?trees",
    ],
    seal: ["certified", "eco labels?", "seals? of approval", "approved by"],
    forecast: ["will (?:\\p{L}+ )?(?:save|cut|reduce|lower|avoid|halve)"],
    "same-quality": ["(?:same|identical|equal) quality"],
  },
  spared: [
    "sustainability (?:officers?|report(?:s|ing)?|statements?)",
    "corporate sustainability (?:reporting|due diligence) directive",
    "european sustainability reporting standards?",
    "natural (?:gas|fibres?|fibers?|logarithms?|numbers?|draught|convection)",
    "best available techniques?",
    "best estimates?",
    "clean (?:feed|rinse|steam|water)",
    "responsible for",
    "(?:no|not a|never a|nor a|neither a|than a) (?:water|carbon) foot print",
    "partial carbon foot print",
    "pure (?:new )?(?:cotton|wool|silk|linen|polyester|viscose|water)",
    "green (?:shades?|hues?|colou?rs?|threads?|channel|pixels?|separation)",
  ],
  comparing: [
    "(?:less|lower|fewer|reduced|smaller|minimal) (?:process |waste |fresh )?(?:water|energy|electricity|steam|gas|heat|co2|co2e|carbon|emissions?|effluent|chemicals?|waste|load)",
    "(?:sav|reduc|cut|lower|halv)(?:es?|s|ing|ed|ting)? (?:#%? )?(?:of )?(?:the |your |our )?(?:process )?(?:water|energy|electricity|steam|gas|emissions?|effluent|chemicals?)",
    "(?:water|energy|steam) savings?",
  ],
  basis: ["than", "against", "compared", "versus", "vs", "relative to", "instead of", "beside"],
  frequent: ["the", "and", "of", "is", "with", "for", "our", "that", "from", "by", "are", "this"],
};
