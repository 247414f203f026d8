// Tables that sort: a click on the head of a column orders its rows, a second one turns them round. Without scripts the tables stay as they are.
for (const table of document.querySelectorAll('table')) {
  const body = table.tBodies[0];
  if (!body || body.rows.length < 3) continue;
  const heads = [...table.tHead.rows[0].cells];
  const asNumber = text => {
    const found = text.replace(/[−–]/g, '-').match(/^[^0-9-]*(-?[0-9][0-9,]*\.?[0-9]*)/);
    return found ? Number(found[1].replace(/,/g, '')) : NaN;
  };
  heads.forEach((head, column) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.append(...head.childNodes);
    head.append(button);
    button.addEventListener('click', () => {
      const down = head.getAttribute('aria-sort') === 'ascending';
      heads.forEach(other => other.removeAttribute('aria-sort'));
      head.setAttribute('aria-sort', down ? 'descending' : 'ascending');
      const rows = [...body.rows].map((row, place) => ({ row, place, text: row.cells[column].textContent.trim() }));
      const numeric = rows.every(({ text }) => text === '' || !Number.isNaN(asNumber(text)));
      rows.sort((a, b) => {
        if ((a.text === '') !== (b.text === '')) return a.text === '' ? 1 : -1;
        const order = numeric ? asNumber(a.text) - asNumber(b.text) : a.text.localeCompare(b.text, 'en');
        return (down ? -order : order) || a.place - b.place;
      });
      body.append(...rows.map(({ row }) => row));
    });
  });
}
