import { plainText, xmlText } from "./printable.js";

/** What the file says of itself. */
export interface Properties {
  /** Title of the report. */
  readonly title: string;
  /** Print house. */
  readonly author: string;
  /** Language, BCP 47. */
  readonly language: string;
  /** Date of the report, ISO 8601. */
  readonly date: string;
}

/** Program named as maker in the file's properties. */
const MAKER = "Millrace";

/**
 * Reads the date of a report without regard to where the reader's clock stands.
 *
 * @param date - ISO 8601, with or without a time; a time without a zone is taken as UTC
 * @returns the moment
 * @throws Error when it is not a date
 */
export function moment(date: string): Date {
  const zoned = /T.*(Z|[+-]\d\d:?\d\d)$/.test(date) || !date.includes("T") ? date : `${date}Z`;
  const read = new Date(zoned);
  if (!/^\d{4}-\d\d-\d\d/.test(date) || Number.isNaN(read.getTime())) {
    throw new Error(
      `the report's date is "${plainText(date)}"; expected ISO 8601 such as 2025-06-30; correct the date`,
    );
  }
  return read;
}

/**
 * Writes the properties twice, as the format wants them: as a dictionary and as an XMP packet that
 * also states PDF/UA-1. The packet's frame and the PDF/A mark come from the library.
 *
 * Source: ISO 16684-1 (XMP), ISO 19005-3 6.6 (extension schemas), ISO 14289-1 clause 5.
 *
 * @param properties - title, author, language, date
 * @returns the dictionary's entries, and RDF descriptions with every value escaped
 */
export function metadata(properties: Properties): {
  readonly information: Readonly<Record<string, string | Date>>;
  readonly xml: string;
} {
  const date = moment(properties.date);
  const stamp = `${date.toISOString().slice(0, 19)}Z`;
  return {
    information: {
      Title: plainText(properties.title),
      Author: plainText(properties.author),
      Producer: MAKER,
      Creator: MAKER,
      CreationDate: date,
      ModDate: date,
    },
    xml: `
<rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
  <xmp:CreateDate>${stamp}</xmp:CreateDate>
  <xmp:ModifyDate>${stamp}</xmp:ModifyDate>
  <xmp:CreatorTool>${MAKER}</xmp:CreatorTool>
</rdf:Description>
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/">
  <dc:title><rdf:Alt><rdf:li xml:lang="x-default">${xmlText(properties.title)}</rdf:li></rdf:Alt></dc:title>
  <dc:creator><rdf:Seq><rdf:li>${xmlText(properties.author)}</rdf:li></rdf:Seq></dc:creator>
  <dc:language><rdf:Bag><rdf:li>${xmlText(properties.language)}</rdf:li></rdf:Bag></dc:language>
</rdf:Description>
<rdf:Description rdf:about="" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
  <pdf:Producer>${MAKER}</pdf:Producer>
</rdf:Description>
<rdf:Description rdf:about="" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
  <pdfuaid:part>1</pdfuaid:part>
</rdf:Description>
<rdf:Description rdf:about=""
    xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
    xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
    xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
  <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
    <pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
    <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
    <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
    <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
      <pdfaProperty:name>part</pdfaProperty:name>
      <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
      <pdfaProperty:category>internal</pdfaProperty:category>
      <pdfaProperty:description>Part of ISO 14289 the file is made to</pdfaProperty:description>
    </rdf:li></rdf:Seq></pdfaSchema:property>
  </rdf:li></rdf:Bag></pdfaExtension:schemas>
</rdf:Description>
`,
  };
}
