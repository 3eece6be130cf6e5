/**
 * Words of French that may not stand.
 */

import type { LanguageWords } from "./language.js";

/** French. */
export const FRENCH: LanguageWords = {
  language: "fr",
  bans: {
    vague: [
      "verte?s?",
      "éco",
      "éco (?:responsab|friendly|conçu|concept|label|imprim|textile|geste|produit|encre)~",
      "écolog~",
      "(?:respectueu(?:x|se|ses)|soucieu(?:x|se|ses)) (?:de l'environnement|de la nature|de la planète|du climat|de l'écologie)",
      "respect(?:e|ent|ant|ons) (?:l'environnement|la nature|la planète|le climat)",
      "ami(?:e|s|es)? (?:de l'environnement|de la nature|de la planète|du climat)",
      "(?:bon|bonne|mieux|meilleur) pour (?:l'environnement|la nature|le climat)",
      "planète",
    ],
    sustainable: ["(?:éco )?durables?", "durablement", "durabilité", "soutenables?"],
    "climate-neutral": [
      "neutres? (?:en carbone|carbone|en co2|pour le climat|climatiquement)",
      "neutralité (?:carbone|climatique)",
      "(?:carbone|co2|climat) (?:neutre|positi|négati)~",
      "climatiquement neutres?",
      "zéro (?:émission nette|émissions nettes|net)",
      "(?:co2|carbone) compensée?s?",
    ],
    "low-carbon": [
      "bas(?:se|ses)? (?:carbone|émissions?)",
      "(?:à )?faibles? (?:émissions?|impact|empreinte)~",
      "décarbonée?s?",
    ],
    "energy-efficient": [
      "(?:économes?|efficaces?|efficients?|performante?s?) en énergie",
      "énergétiquement (?:efficace|performant|sobre)~",
    ],
    clean: [
      "(?:énergie|production|impression|encre|procédé|technologie|textile|chimie|teinture|fabrication|rejet|effluent|mode|industrie)s? (?:plus )?propres?",
      "plus propres?",
      "pure?s?",
    ],
    harmless: ["inoffensi(?:f|fs|ve|ves)", "non (?:toxique|polluant|nocif|nocive)~", "sans danger"],
    "free-of": [
      "sans (?:eau|produits? chimiques?|chimie|formaldéhyde|rejets?|émissions?|déchets?|pollution|effluents?|toxiques?)",
    ],
    zero: ["zéro (?:déchet|eau|rejet|effluent|émission|impact|pollution|carbone)s?"],
    degradable: ["bio dégradab~", "dégradables?", "compostables?"],
    natural: ["bio sourcée?s?", "naturel(?:s|le|les)?", "bio"],
    conscious: [
      "responsables?",
      "(?:engagée?s?|agit|agissons) pour (?:la planète|l'environnement|le climat)",
    ],
    best: ["(?:le|la|les) meilleure?s?", "(?:le|la|les) plus (?:verte?s?|propres?|écologiques?)"],
    guaranteed: ["garanti(?:e|s|es|t|ssons|ssent)?"],
    conformity: ["conformes?"],
    footprint: [
      "empreintes? (?:en )?(?:eau|hydrique|carbone|écologique|environnementale|climatique|co2)s?",
    ],
    equivalent: [
      "piscines?",
      "baignoires?",
      "# (?:\\p{L}+ )?(?:arbres|voitures|foyers|douches|bouteilles|vols|terrains de football)",
      "(?:équiva(?:ut|lent|lents|lente)|correspond(?:ent|ant)?|autant que|de quoi|l'équivalent)…(?:arbres?|voitures?|foyers?|douches?|bouteilles?|vols?|terrains? de football)",
      "plant(?:er|ons|ez|és)…arbres?",
    ],
    seal: ["certifiée?s?", "labels?", "labellisée?s?"],
    forecast: [
      "(?:économiser|diminuer|éviter|baisser)(?:a|ont)",
      "réduir(?:a|ont)",
      "(?:va|vont) (?:économiser|réduire|diminuer|éviter)",
    ],
    "same-quality": ["même qualité", "qualité (?:identique|égale)"],
  },
  spared: [
    "(?:rapports?|responsables?|directeur|directrice|service|déclaration) (?:de|du) (?:la )?(?:durabilité|développement durable)",
    "responsables? (?:de|du|des|d'\\p{L}+)",
    "(?:les )?meilleures techniques disponibles",
    "(?:la )?meilleure estimation",
    "gaz naturels?",
    "fibres? naturelles?",
    "logarithmes? naturels?",
    "pure? (?:coton|laine|soie|lin|laine vierge)",
    "(?:teinte|couleur|nuance|fil|feu)s? verte?s?",
    "(?:pas|ni|aucune) (?:une |d')?empreinte (?:en )?(?:eau|hydrique|carbone)",
  ],
  comparing: [
    "(?:moins|peu) (?:d'|de )(?:eau|énergie|électricité|vapeur|gaz|co2|émissions|rejets|effluents|produits chimiques|déchets)",
    "(?:économis|rédui|diminu)(?:e|ent|ons|t|sent|sons) (?:#%? )?(?:d'|de )?(?:l'|la |les )?(?:consommation|eau|énergie|émissions|rejets|vapeur)",
    "économies? (?:d'eau|d'énergie|de vapeur)",
  ],
  basis: [
    "que",
    "qu'\\p{L}+",
    "rapport",
    "contre",
    "au lieu",
    "comparée?s?",
    "comparaison",
    "face",
  ],
  frequent: ["le", "la", "les", "des", "et", "est", "avec", "pour", "nous", "dans", "une", "du"],
};
