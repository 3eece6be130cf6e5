/** Thrown when a template asks for something that does not exist or may not stand in a report. */
export class TemplateError extends Error {
  /** Shown in front of the message. */
  override readonly name = "TemplateError";

  /** Name of the template. */
  readonly template: string;

  /** Line of the template, counted from 1; 0 where no line can be named. */
  readonly line: number;

  /**
   * @param template - name of the template
   * @param line - its line, counted from 1; 0 where no line can be named
   * @param complaint - what is wrong and what to write instead, in one line
   */
  constructor(template: string, line: number, complaint: string) {
    super(line > 0 ? `${template}, line ${line}: ${complaint}` : `${template}: ${complaint}`);
    this.template = template;
    this.line = line;
  }
}
