import { openApi, REFUSALS, type Route, routes } from '@stokehold/domain/contract';

type Schema = { readonly [name: string]: unknown };
type Operation = {
  readonly parameters: readonly { readonly name: string; readonly in: string; readonly schema: Schema }[];
  readonly requestBody?: { readonly content: { readonly 'application/json': { readonly schema: Schema } } };
  readonly responses: { readonly [status: string]: { readonly content?: { readonly 'application/json'?: { readonly schema: Schema } } } };
};

const escape = (text: string) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
const words = (code: string) => code.replaceAll('-', ' ');
const asks: Readonly<Record<Route['may'], string>> = {
  open: 'Nothing: it is open.',
  device: 'An enrolled device.',
  look: 'A wall board, or a person who is signed in.',
  'read-in': 'A gateway, or a person who is signed in.',
  record: 'A person who is signed in.',
  plan: 'A shift lead or a manager.',
  manage: 'A manager.',
};

const shape = (title: string, schema: Schema | undefined) =>
  schema ? `<details><summary>${title}</summary><pre>${escape(JSON.stringify(schema, null, 2))}</pre></details>` : '';
const codeLink = (code: string) => `<a href="#${code}">${code}</a>`;

function section(name: string, route: Route, { parameters, requestBody, responses }: Operation): string {
  const success = route.method === 'POST' ? '201' : '200';
  const given = parameters.map((one) => `<li><code>${escape(one.name)}</code> (in the ${one.in === 'path' ? 'address' : 'query'})</li>`).join('');
  return [
    `<section id="route-${name}">`,
    `<h3><code>${route.method} /api${escape(route.path)}</code></h3>`,
    `<p>${escape(route.summary)}. <span class="asks">${asks[route.may]}</span></p>`,
    given && `<ul>${given}</ul>`,
    shape('What it takes', requestBody?.content['application/json'].schema),
    shape(`What it answers (${success})`, responses[success]?.content?.['application/json']?.schema),
    route.refusals.length > 0 ? `<p>It may refuse with ${route.refusals.map(codeLink).join(', ')}.</p>` : '',
    '</section>',
  ].join('\n');
}

const refusalRow = ([code, status]: [string, number]) => {
  const from = Object.entries(routes as Record<string, Route>).filter(([, { refusals }]) => (refusals as readonly string[]).includes(code));
  const links = from.map(([name, { method, path }]) => `<a href="#route-${name}">${method} ${escape(path)}</a>`).join('<br>') || 'any';
  return `<tr id="${code}"><td><code>${code}</code></td><td>${status}</td><td>${words(code)}</td><td>${links}</td></tr>`;
};

/** The API as a page to read: every route with what it takes and answers, and every refusal at the address its problem names. */
export function docsPage(version: string): string {
  const { paths } = openApi(version) as unknown as { paths: { [path: string]: { [method: string]: Operation } } };
  const sections = Object.entries(routes as Record<string, Route>).map(([name, route]) => {
    const path = `/api${route.path.replaceAll(/:([A-Za-z]+)/g, '{$1}')}`;
    return section(name, route, paths[path]![route.method.toLowerCase()]!);
  });
  return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>The API of Stokehold ${escape(version)}</title><link rel="stylesheet" href="/api/docs/look.css"></head>
<body>
<h1>The API of Stokehold ${escape(version)}</h1>
<p>Bodies and answers are JSON of at most 256 kB. Instants are UTC, such as <code>2027-03-14T08:00:00Z</code>; numbers carry their unit in their name.
Every command has a <code>key</code>, a UUID made by the client: the same key again brings the first answer and changes nothing, so a command that got no answer is sent again as it was.
A browser is known by its cookies, a gateway by <code>Authorization: Bearer</code> with its device token. The same for programs: <a href="/api/openapi.json">OpenAPI 3.1</a>.</p>
<h2>Ways in</h2>
${sections.join('\n')}
<h2>Refusals</h2>
<p>A refusal changes nothing. It comes as <code>application/problem+json</code> (RFC 9457) with one of these codes and a sentence that says what to do. Every route may also refuse with
${['input-invalid', 'device-unknown', 'not-signed-in', 'not-allowed', 'database-away', 'unexpected'].map(codeLink).join(', ')}.</p>
<table><thead><tr><th>code</th><th>status</th><th>in words</th><th>where</th></tr></thead><tbody>
${Object.entries(REFUSALS).map(refusalRow).join('\n')}
</tbody></table>
</body>
</html>`;
}

export const LOOK = `
:root { color-scheme: light dark; }
body { font: 1rem/1.5 system-ui, sans-serif; max-width: 60rem; margin: 2rem auto; padding: 0 1rem; }
h3 { margin-bottom: 0; }
h3, td { overflow-wrap: anywhere; }
section { border-top: 1px solid #8888; padding: .5rem 0; }
pre { overflow: auto; max-height: 24rem; border: 1px solid #8888; padding: .5rem; font-size: .85rem; }
.asks { opacity: .8; }
table { border-collapse: collapse; }
td, th { text-align: left; vertical-align: top; padding: .25rem 1rem .25rem 0; border-top: 1px solid #8888; }
@media (max-width: 40rem) { td, th { padding-right: .4rem; font-size: .8rem; } }
tr:target { outline: 2px solid; }
`;
