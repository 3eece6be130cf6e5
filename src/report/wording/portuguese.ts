/**
 * Words of Portuguese that may not stand.
 */

import type { LanguageWords } from "./language.js";

/** Portuguese. */
export const PORTUGUESE: LanguageWords = {
  language: "pt",
  bans: {
    vague: [
      "verdes?",
      "eco",
      "eco (?:friendly|responsáv|amig|eficien|têxt|produt|impress)~",
      "ecológic~",
      "amig(?:o|a|os|as|ável|áveis) d[oa] (?:ambiente|meio ambiente|planeta|clima|natureza)",
      "respeit(?:a|am|amos|ador|adora) (?:d?o ambiente|d?o meio ambiente|d?a natureza|d?o planeta)",
      "(?:bom|boa|melhor) para (?:o ambiente|o meio ambiente|a natureza|o clima)",
      "planeta",
    ],
    sustainable: ["(?:eco )?sustentáv(?:el|eis|elmente)", "sustentabilidade"],
    "climate-neutral": [
      "neutr(?:o|a|os|as|al) (?:em carbono|em co2|em emissões|para o clima)",
      "climaticamente neutr~",
      "neutralidade (?:climática|carbónica|carbônica|de carbono)",
      "(?:carbono|co2|clima) (?:neutr|positiv|negativ|zero)~",
      "emissões líquidas (?:zero|nulas)",
    ],
    "low-carbon": ["baix[oa]s? (?:em |de |teor de )?(?:carbono|emissões|emissão|impacte|impacto)"],
    "energy-efficient": [
      "energeticamente eficientes?",
      "eficientes? (?:em energia|energeticamente)",
      "de baixo consumo",
    ],
    clean: ["(?:mais )?limp[oa]s?", "pur[oa]s?"],
    harmless: ["inócu[oa]s?", "inofensiv[oa]s?", "não (?:tóxic|poluent|nociv)~", "atóxic[oa]s?"],
    "free-of": [
      "sem (?:água|químicos|produtos químicos|formaldeído|efluentes|emissões|resíduos|tóxicos)",
      "(?:livres?|isent[oa]s?) de (?:químicos|produtos químicos|tóxicos|formaldeído|água)",
    ],
    zero: [
      "zero (?:resíduos|água|efluentes|emissões|impacto|impacte|desperdício)",
      "(?:resíduos?|desperdício|emissões|impacto|lixo) zero",
    ],
    degradable: ["bio degradáv(?:el|eis)", "compostáv(?:el|eis)"],
    natural: ["bio basead[oa]s?", "natura(?:l|is)", "bio"],
    conscious: ["conscientes?", "responsáv(?:el|eis|elmente)"],
    best: [
      "(?:o|a|os|as) melhor(?:es)?",
      "(?:o|a|os|as) mais (?:verdes?|limp[oa]s?|ecológic[oa]s?|sustentáve(?:l|is))",
    ],
    guaranteed: ["garant(?:e|em|imos|ido|ida|idos|idas)"],
    conformity: [
      "cumpr(?:e|em|imos) (?:com )?(?:o |a )?(?:reach|norma|regulamento|lei|legislação|iso #)",
      "em conformidade com",
    ],
    footprint: ["pegadas? (?:hídric|de água|de carbono|carbónic|ecológic|ambienta|climátic)~"],
    equivalent: [
      "piscinas?",
      "banheiras?",
      "# (?:\\p{L}+ )?(?:árvores|carros|automóveis|famílias|lares|duches|chuveiros|garrafas|voos|campos de futebol)",
      "(?:equival(?:e|em|ente|entes)|correspond(?:e|em|ente)|como|suficientes? para)…(?:árvores?|carros?|famílias?|lares|duches?|garrafas?|voos?|campos? de futebol)",
      "plant(?:ar|amos|ado)…árvores?",
    ],
    seal: ["certificad[oa]s?", "selos?", "rótulos? ecológicos?"],
    forecast: [
      "(?:poupará|economizará|reduzirá|diminuirá|evitará)",
      "(?:poupa|economiza|reduzi|diminui|evita)rão",
    ],
    "same-quality": ["mesma qualidade", "qualidade idêntica"],
  },
  spared: [
    "(?:relatórios?|responsável|diretora?|declaração) de sustentabilidade",
    "responsáv(?:el|eis) (?:por|pel[oa]s?|de|d[oa]s?)",
    "(?:as )?melhores técnicas disponíveis",
    "(?:a )?melhor estimativa",
    "gás natural",
    "fibras? natura(?:l|is)",
    "logaritmos? natura(?:l|is)",
    "pur[oa] (?:algodão|lã|seda|linho)",
    "(?:cor|tom|fio) verde",
    "água limpa",
    "não (?:é )?uma pegada (?:hídrica|de carbono)",
  ],
  comparing: [
    "(?:menos|menor) (?:água|energia|eletricidade|vapor|gás|co2|emissões|efluentes|químicos|produtos químicos|resíduos)",
    "(?:poupa|economiza|reduz)(?:m|em|mos|imos)? (?:#%? )?(?:de )?(?:o |a |as |os )?(?:água|energia|consumo|emissões|efluentes|vapor)",
    "poupança de (?:água|energia)",
  ],
  basis: ["que", "relativamente", "face", "comparad[oa]s?", "comparação", "em vez", "contra"],
  frequent: ["o", "os", "as", "e", "é", "com", "para", "não", "nossa", "da", "do", "uma", "em"],
};
