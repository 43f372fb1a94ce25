// Every object of OBJ files through an independent kernel of closed meshes: is each piece one, and
// do they hold together what the exact solids do?
// Usage: node check_meshes.mjs MODULES FILE...    beside each FILE.obj lies FILE.volumes: mm3 of
// each piece in order, with true circles
import fs from "node:fs";
import { pathToFileURL } from "node:url";

const [modules, ...files] = process.argv.slice(2);
const kernel = await import(
    pathToFileURL(`${modules}/node_modules/manifold-3d/manifold.js`).href);
const wasm = await kernel.default();
wasm.setup();

function objects(text) {
    const all = [];
    let first = 0;
    let seen = 0;
    for (const line of text.split("\n")) {
        const [key, ...rest] = line.split(" ");
        if (key === "o") {
            first = seen;
            all.push({ name: rest.join(" "), positions: [], triangles: [] });
        } else if (key === "v") {
            all.at(-1).positions.push(...rest.map(Number));
            ++seen;
        } else if (key === "f") {
            all.at(-1).triangles.push(...rest.map((c) => parseInt(c, 10) - 1 - first));
        }
    }
    return all;
}

let failed = files.length === 0;
let pieces = 0;
let worst = 0;
for (const file of files) {
    const volumes = fs.readFileSync(file.replace(/obj$/, "volumes"), "utf8").trim().split("\n");
    objects(fs.readFileSync(file, "utf8")).forEach((object, index) => {
        const mesh = new wasm.Mesh({
            numProp: 3,
            vertProperties: Float32Array.from(object.positions),
            triVerts: Uint32Array.from(object.triangles),
        });
        mesh.merge();
        const complain = (what) => {
            console.log(`${file}: ${object.name}: ${what}`);
            failed = true;
        };
        let solid;
        try {
            solid = new wasm.Manifold(mesh);
        } catch (error) {
            complain(`not closed: ${error.message ?? error}`);
            return;
        }
        ++pieces;
        if (solid.status() !== "NoError") complain(`not closed: ${solid.status()}`);
        if (solid.decompose().length !== 1) complain("not one solid");
        // Holes have 24 chords, roundings four a quarter: the mesh holds a little more or less.
        const off = Math.abs(solid.volume() / Number(volumes[index]) - 1);
        worst = Math.max(worst, off);
        if (!(off < 0.005)) complain(`holds ${solid.volume()}, should be about ${volumes[index]}`);
        solid.delete();
    });
}
console.log(`${pieces} pieces are closed; volumes within ${worst.toExponential(1)} of the solids'`);
process.exit(failed || pieces === 0 ? 1 : 0);
