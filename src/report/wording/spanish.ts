/**
 * Words of Spanish that may not stand.
 */

import type { LanguageWords } from "./language.js";

/** Spanish. */
export const SPANISH: LanguageWords = {
  language: "es",
  bans: {
    vague: [
      "verdes?",
      "eco",
      "eco (?:friendly|responsab|amigab|eficien|textil|produc|impresi)~",
      "ecológic~",
      "(?:respetuos[oa]s?|amigables?|amables?) con (?:el |la )?(?:medio ambiente|medioambiente|planeta|naturaleza|clima|entorno)",
      "respet(?:a|an|amos) (?:el medio ambiente|el medioambiente|la naturaleza|el planeta)",
      "(?:buen[oa]?|mejor) para (?:el medio ambiente|el medioambiente|la naturaleza|el clima)",
      "planeta",
    ],
    sustainable: ["(?:eco )?sostenib~", "sustentab~"],
    "climate-neutral": [
      "neutr(?:o|a|os|as|al|ales) (?:en carbono|en co2|en emisiones|para el clima)",
      "climáticamente neutr~",
      "neutralidad (?:climática|de carbono|en carbono)",
      "(?:carbono|co2|clima) (?:neutr|positiv|negativ)~",
      "(?:cero neto|cero emisiones netas|emisiones netas cero)",
    ],
    "low-carbon": ["baj[oa]s? (?:en |de )?(?:carbono|emisiones|emisión|impacto)"],
    "energy-efficient": [
      "energéticamente eficientes?",
      "eficientes? (?:en energía|energéticamente)",
      "de bajo consumo",
    ],
    clean: ["(?:más )?limpi[oa]s?", "pur[oa]s?"],
    harmless: ["inocu[oa]s?", "inofensiv[oa]s?", "no (?:tóxic|contaminant|nociv)~", "atóxic[oa]s?"],
    "free-of": [
      "sin (?:agua|químicos|productos químicos|formaldehído|vertidos|emisiones|residuos|efluentes|tóxicos)",
      "libres? de (?:químicos|tóxicos|formaldehído|emisiones|agua)",
    ],
    zero: [
      "cero (?:residuos|agua|vertidos|emisiones|impacto|efluentes)",
      "(?:residuos?|emisiones|impacto|vertidos?) cero",
    ],
    degradable: ["bio degradab~", "compostables?"],
    natural: ["bio basad[oa]s?", "natural(?:es)?", "bio"],
    conscious: ["conscientes?", "responsab(?:le|les|lemente)"],
    best: [
      "(?:el|la|los|las) mejor(?:es)?",
      "(?:el|la|los|las) más (?:verdes?|limpi[oa]s?|ecológic[oa]s?|sostenibles?)",
    ],
    guaranteed: ["garantiza(?:do|da|dos|das|mos|n)?"],
    conformity: [
      "cumpl(?:e|en|imos) (?:con )?(?:reach|la norma|la normativa|el reglamento|la ley|iso #)",
    ],
    footprint: ["huellas? (?:hídric|de agua|de carbono|ecológic|ambiental|climátic)~"],
    equivalent: [
      "piscinas?",
      "bañeras?",
      "# (?:\\p{L}+ )?(?:árboles|coches|carros|hogares|duchas|botellas|vuelos|campos de fútbol)",
      "(?:equival(?:e|en|ente|entes)|correspond(?:e|en|iente)|como|suficientes? para)…(?:árbol(?:es)?|coches?|carros?|hogar(?:es)?|duchas?|botellas?|vuelos?|campos? de fútbol)",
      "plant(?:ar|amos|ado)…árbol(?:es)?",
    ],
    seal: ["certificad[oa]s?", "sellos?", "etiquetas? (?:ecológica|verde)s?"],
    forecast: ["(?:ahorrará|reducirá|disminuirá|evitará)n?"],
    "same-quality": ["misma calidad", "calidad idéntica"],
  },
  spared: [
    "(?:informes?|responsables?|directora?|memoria|declaración) de sostenibilidad",
    "responsables? (?:de|del)",
    "(?:las )?mejores técnicas disponibles",
    "(?:la )?mejor estimación",
    "gas natural",
    "fibras? natural(?:es)?",
    "logaritmos? natural(?:es)?",
    "pur[oa] (?:algodón|lana|seda|lino|lana virgen)",
    "(?:color|tono|hilo) verde",
    "agua limpia",
    "no (?:es )?una huella (?:hídrica|de carbono)",
  ],
  comparing: [
    "(?:menos|menor) (?:agua|energía|electricidad|vapor|gas|co2|emisiones|vertidos|químicos|productos químicos|residuos)",
    "(?:ahorr|redu)(?:a|an|amos|ce|cen|cimos) (?:#%? )?(?:de )?(?:el |la |las |los )?(?:agua|energía|consumo|emisiones|vertidos|vapor)",
    "ahorro de (?:agua|energía)",
  ],
  basis: ["que", "respecto", "frente", "comparad[oa]s?", "comparación", "en lugar", "contra"],
  frequent: ["el", "los", "las", "y", "es", "con", "para", "que", "nuestra", "del", "en", "una"],
};
