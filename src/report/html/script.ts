/**
 * What the page can do beyond being read: it opens the trace a number leads to, sorts tables, filters long
 * ones, and opens the data behind charts for print. Nothing is lost without it.
 */
export const SCRIPT = `(() => {
const all = (what, root = document) => [...root.querySelectorAll(what)];
const reveal = () => {
  const place = document.getElementById(location.hash.slice(1));
  for (let at = place; at; at = at.parentElement) if (at.tagName == "DETAILS") at.open = true;
  place?.scrollIntoView();
};
addEventListener("hashchange", reveal);
addEventListener("click", (event) => {
  const link = event.target.closest("a");
  if (link?.hash && link.hash == location.hash) reveal();
});
reveal();
let shut = [];
addEventListener("beforeprint", () => {
  shut = all(".behind:not([open])");
  for (const one of shut) one.open = true;
});
addEventListener("afterprint", () => { for (const one of shut) one.open = false; });
const key = (row, at) => row.cells[at].dataset.v ?? row.cells[at].textContent;
for (const table of all(".sortable")) {
  const heads = all("thead th", table), body = table.tBodies[0];
  if (body.rows.length > 15) {
    const field = document.createElement("input");
    field.type = "search";
    field.placeholder = "Show rows with …";
    field.ariaLabel = "Show rows with these words";
    field.oninput = () => {
      const words = field.value.toLowerCase();
      for (const row of body.rows) row.hidden = !row.textContent.toLowerCase().includes(words);
    };
    table.parentElement.before(field);
  }
  for (const head of heads) {
    if (head.querySelector("a")) continue;
    const button = document.createElement("button"), at = head.cellIndex;
    button.append(...head.childNodes);
    head.append(button);
    button.onclick = () => {
      const up = head.ariaSort != "ascending";
      for (const other of heads) other.ariaSort = null;
      head.ariaSort = up ? "ascending" : "descending";
      body.prepend(...all("tr:not(.total)", body).sort((a, b) => {
        const [x, y] = [key(a, at), key(b, at)];
        return (x - y || x.localeCompare(y, undefined, { numeric: true })) * (up ? 1 : -1);
      }));
    };
  }
}
})();`;
