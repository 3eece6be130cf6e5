/**
 * Words of Turkish that may not stand.
 */

import type { LanguageWords } from "./language.js";

/** Turkish. Endings are many, so most wordings are stems. */
export const TURKISH: LanguageWords = {
  language: "tr",
  bans: {
    vague: [
      "yeşil(?:i|in|dir|den|e)?",
      "çevre (?:dostu|ci)~",
      "çevreye (?:duyarlı|saygılı|zarar vermeyen|dost)~",
      "doğa dostu~",
      "doğaya (?:dost|saygılı|zarar vermeyen)~",
      "ekolojik~",
      "eko",
      "eko (?:dostu|baskı|tekstil|kumaş|ürün)~",
      "iklim dostu~",
      "gezegen~",
    ],
    sustainable: ["sürdürülebilir~"],
    "climate-neutral": [
      "(?:karbon|iklim|co2) (?:nötr|pozitif|negatif)~",
      "net sıfır~",
      "sıfır karbon~",
      "iklim açısından nötr~",
    ],
    "low-carbon": ["düşük (?:karbon|emisyon|etki)~"],
    "energy-efficient": ["enerji (?:verimli(?!li[kğ])|tasarruflu)~", "enerji açısından verimli~"],
    clean: ["(?:daha )?temiz(?:dir|i|ler|leri)?", "tertemiz", "saf"],
    harmless: ["zararsız~", "toksik olmayan", "zehirsiz~", "kirletmeyen"],
    "free-of": [
      "susuz~",
      "kimyasalsız~",
      "formaldehitsiz~",
      "kimyasal içermeyen",
      "(?:atık|emisyon)sız~",
    ],
    zero: ["sıfır (?:atık|su|emisyon|etki|deşarj)~"],
    degradable: [
      "biyo bozunur~",
      "biyolojik olarak (?:bozun|parçalan|ayrış|çözün)~",
      "doğada çözün~",
      "kompostlanabilir~",
    ],
    natural: ["biyo bazlı~", "doğal(?:dır|ı)?", "organik (?:baskı|boya|mürekkep)~"],
    conscious: ["bilinçli~", "sorumlu (?:üretim|moda|tüketim)~"],
    best: ["en (?:iyi|yeşil|temiz|çevreci|doğal)~"],
    guaranteed: ["garantili~", "garanti (?:edi|eder)~"],
    conformity: ["(?:reach|iso #) (?:uyumlu|uygun)~", "mevzuata uygun~"],
    footprint: ["(?:su|karbon|ekolojik|çevresel) ayak izi~"],
    equivalent: [
      "yüzme havuz~",
      "havuz dolusu",
      "küvet~",
      "# (?:\\p{L}+ )?(?:ağa[cç]|araba|otomobil|hane|duş|şişe|uçuş|futbol sahası)~",
    ],
    seal: ["sertifikalı~", "mühürlü~", "eko etiket~"],
    forecast: ["(?:tasarruf edecek|azaltacak|düşürecek|önleyecek)~"],
    "same-quality": ["aynı kalite~"],
  },
  spared: [
    "sürdürülebilirlik (?:rapor|sorumlu|müdür|beyan)~",
    "mevcut en iyi teknik~",
    "en iyi tahmin~",
    "doğal (?:gaz|lif|elyaf|logaritma)~",
    "saf (?:pamuk|yün|ipek|keten|su)~",
    "temiz su~",
    "yeşil (?:renk|ton|iplik)~",
  ],
  comparing: [
    "daha (?:az|düşük) (?:su|enerji|elektrik|buhar|gaz|co2|emisyon|atık|kimyasal)~",
    "(?:su|enerji|buhar)(?:dan)? tasarruf~",
  ],
  basis: ["göre", "kıyasla", "yerine", "karşı~", "oranla"],
  frequent: ["ve", "bir", "için", "ile", "bu", "olan", "daha", "da", "de", "çok", "olarak", "ama"],
};
