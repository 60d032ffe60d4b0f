// SPDX-License-Identifier: MIT
// Asks other people's programs about our outputs: node validate.cjs PACKAGES KIND FILE... where KIND is sarif, review, csv, html.
// Status 1 if a file is refused; each fault is printed.
"use strict";
const fs = require("fs");
const path = require("path");
const [packages, kind, ...files] = process.argv.slice(2);
const from = require("module").createRequire(path.resolve(packages, "package.json"));
const read = (file) => fs.readFileSync(file, "utf8");
const json = (file) => JSON.parse(read(file));

// The published schema takes keys it does not know; here each must be described.
function closed(schema) {
	if (Array.isArray(schema)) return schema.map(closed);
	if (schema === null || typeof schema !== "object") return schema;
	const copy = Object.fromEntries(Object.entries(schema).map(([key, value]) => [key, closed(value)]));
	if (copy.type === "object" && copy.properties !== undefined) copy.additionalProperties = false;
	return copy;
}

function bySchema(schema) {
	const Ajv = from("ajv/dist/2020");
	const check = new Ajv({ strict: false, allErrors: true, validateFormats: false }).compile(schema);
	return (tree) => (check(tree) ? [] : check.errors.map((error) => `${error.instancePath} ${error.message} ${JSON.stringify(error.params)}`));
}

// One tree of a .json, one a line of an .ndjson.
const trees = (file) => (file.endsWith(".ndjson") ? read(file).trimEnd().split("\n").map((line) => JSON.parse(line)) : [json(file)]);

const kinds = {
	sarif() {
		const check = bySchema(json(path.join(packages, "node_modules/@microsoft/sarif-multitool-linux/sarif-2.1.0.json")));
		return (file) => check(json(file));
	},
	review() {
		const check = bySchema(closed(json("docs/review.schema.json")));
		return (file) => trees(file).flatMap(check);
	},
	csv() {
		const { parse } = from("csv-parse/sync");
		return (file) => {
			const rows = parse(read(file), { columns: true, record_delimiter: "\r\n" });
			const formulas = rows.flatMap(Object.values).filter((cell) => /^\s*[=+@\t\r-]/.test(cell) && !/^-?[\d.]+$/.test(cell));
			return formulas.map((cell) => `a formula: ${cell}`);
		};
	},
	html() {
		const { HtmlValidate } = from("html-validate");
		const rules = { "no-inline-style": "off", "void-style": "off", "no-trailing-whitespace": "off", "long-title": "off" };
		const validator = new HtmlValidate({ root: true, extends: ["html-validate:recommended"], rules });
		return (file) =>
			validator.validateStringSync(read(file)).results.flatMap((result) =>
				result.messages.map((message) => `${message.line}:${message.column}: ${message.message} (${message.ruleId})`));
	},
};

const check = kinds[kind]();
let faults = 0;
for (const file of files) {
	let found;
	try {
		found = check(file);
	} catch (error) {
		found = [String(error.message)];
	}
	if (faults < 10) for (const fault of found.slice(0, 3)) console.log(`${file}: ${fault}`);
	faults += found.length;
}
process.exit(faults > 0 ? 1 : 0);
