// JSON on standard input, {page: [data blocks]} -> JSON on standard output, [[page, severity, message]].
// The one argument is the folder of the installed packages.
import { text } from "node:stream/consumers";

const { Validator } = await import(`${process.argv[2]}/@adobe/structured-data-validator/src/validator.js`);
const found = [];
for (const [page, blocks] of Object.entries(JSON.parse(await text(process.stdin)))) {
  const byType = {};
  for (const block of blocks.flatMap((one) => one["@graph"] ?? one)) (byType[block["@type"]] ??= []).push(block);
  for (const fault of await new Validator().validate({ jsonld: byType }))
    found.push([page, fault.severity, `${fault.rootType}: ${fault.issueMessage}`]);
}
process.stdout.write(JSON.stringify(found));
