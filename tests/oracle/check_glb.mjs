// Every GLB file through the official validator of glTF.
// Usage: node check_glb.mjs MODULES FILE...    MODULES: the folder in which npm installed
import fs from "node:fs";
import { createRequire } from "node:module";

const [modules, ...files] = process.argv.slice(2);
const require = createRequire(`${modules}/package.json`);
const validator = require("gltf-validator");

let failed = files.length === 0;
for (const file of files) {
    const report = await validator.validateBytes(new Uint8Array(fs.readFileSync(file)));
    const { numErrors, numWarnings, numInfos, messages } = report.issues;
    const { drawCallCount, totalVertexCount, totalTriangleCount } = report.info;
    console.log(
        `${file}: ${numErrors} errors, ${numWarnings} warnings, ${numInfos} infos; ` +
            `${drawCallCount} meshes, ${totalVertexCount} vertices, ${totalTriangleCount} triangles`);
    if (numErrors + numWarnings > 0) {
        console.log(messages.slice(0, 5));
        failed = true;
    }
    if (drawCallCount === 0) failed = true;
}
process.exit(failed ? 1 : 0);
