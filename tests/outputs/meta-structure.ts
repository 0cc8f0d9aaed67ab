import { SaxesParser } from 'saxes';

/** An element of an XML file with what stands in it. */
export interface Element {
  name: string;
  attributes: Record<string, string>;
  children: Element[];
  text: string;
}

/** Reads XML into a tree by another reader than the program writes with; throws where it is not well-formed. */
export function xmlTree(xml: string): Element {
  const top: Element = { name: '', attributes: {}, children: [], text: '' };
  const open = [top];
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => {
    const element: Element = {
      ...{ name, children: [], text: '' },
      attributes: attributes as Record<string, string>,
    };
    open.at(-1)?.children.push(element);
    open.push(element);
  });
  parser.on('text', (text) => {
    const element = open.at(-1);
    if (element) element.text += text;
  });
  parser.on('closetag', () => {
    open.pop();
  });
  parser.write(xml).close();
  const [root] = top.children;
  if (!root) throw new Error('no element');
  return root;
}

/** A table as `meta.xml` describes it. */
export interface DescribedTable {
  element: string;
  rowType: string;
  file: string;
  /** Address of the term of each column. */
  terms: string[];
  /** Column of the identifier that joins the tables. */
  id: number;
}

/**
 * Reads `meta.xml` by the Darwin Core Text Guide (TDWG, 2023-09-13) and its schema: one core, then
 * extensions; in each first `files`, then `id` or `coreid`, then the fields; indexes from 0 without
 * gap; no term twice; what is not the default is declared. Throws where it is otherwise.
 */
export function describedTables(meta: string): DescribedTable[] {
  const archive = xmlTree(meta);
  must(archive.name === 'archive', 'the root is archive');
  must(
    archive.attributes.xmlns === 'http://rs.tdwg.org/dwc/text/',
    'its namespace is the text one',
  );
  const [core, ...extensions] = archive.children;
  must(core?.name === 'core', 'the core comes first');
  must(
    extensions.every(({ name }) => name === 'extension'),
    'the others are extensions',
  );
  return archive.children.map((table) => {
    const names = table.children.map(({ name }) => name);
    const id = table.name === 'core' ? 'id' : 'coreid';
    must(names[0] === 'files' && names[1] === id, `files, ${id} and fields in this order`);
    must(names.slice(2).every((name) => name === 'field') && names.length > 2, 'fields follow');
    const { attributes } = table;
    must(attributes.encoding === 'UTF-8', 'the encoding is declared');
    must(attributes.linesTerminatedBy === '\\r\\n', 'CRLF is declared');
    must(attributes.fieldsTerminatedBy === ',', 'the comma is declared');
    must(attributes.fieldsEnclosedBy === '"', 'the quote is declared');
    must(attributes.ignoreHeaderLines === '1', 'the head line is declared');
    const fields = table.children.slice(2).map((field) => field.attributes);
    must(
      fields.every(({ index }, at) => index === String(at)),
      'indexes run from 0',
    );
    const terms = fields.map(({ term }) => term ?? '');
    must(new Set(terms).size === terms.length, 'no term stands twice');
    const [location, ...others] = table.children[0]?.children ?? [];
    must(location?.name === 'location' && others.length === 0, 'there is one file');
    return {
      element: table.name,
      rowType: attributes.rowType ?? '',
      file: location?.text ?? '',
      terms,
      id: Number(table.children[1]?.attributes.index),
    };
  });
}

function must(holds: boolean, rule: string): void {
  if (!holds) throw new Error(`not so: ${rule}`);
}
