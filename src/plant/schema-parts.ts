/**
 * Parts of the plant file that concern clients and what is said: grades asked for, phrases allowed.
 */

import * as z from "zod";

const grade = z.number().min(1).max(5).describe("a grade from 1 to 5");

/** Schema of phrases that may stand. */
export const WordingPart = z
  .strictObject({
    allow: z
      .array(
        z.strictObject({
          text: z.string().min(1).describe("the phrase, word for word"),
          reason: z.string().min(1).describe("why it is literally true"),
          proof: z.string().min(1).describe("the document that proves it"),
        }),
      )
      .describe("phrases that may stand, each as { text, reason, proof }"),
  })
  .describe("wording that may stand, with its proof");

/** Schema of what a client asks for. */
export const ClientPart = z
  .strictObject({
    minimum: z
      .strictObject({
        rub_dry: grade.optional(),
        rub_wet: grade.optional(),
        wash: grade.optional(),
      })
      .describe("least grades of fastness the client takes, as { rub_dry, rub_wet, wash }"),
  })
  .describe("what a client asks for, as { minimum }");
