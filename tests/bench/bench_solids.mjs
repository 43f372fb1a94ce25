// The WASM kernel on drilled angles, by two routes; prints a line of JSON for each.
// Usage: node bench_solids.mjs MODULES PIECES.json
import fs from "node:fs";
import { pathToFileURL } from "node:url";

const [modules, file] = process.argv.slice(2);
const kernel = await import(
    pathToFileURL(`${modules}/node_modules/manifold-3d/manifold.js`).href);
const wasm = await kernel.default();
wasm.setup();
const { Manifold, CrossSection } = wasm;
const pieces = JSON.parse(fs.readFileSync(file, "utf8"));
const chords = 24;
const kept = []; // WASM memory is freed by hand

function keep(thing) {
    kept.push(thing);
    return thing;
}

// The section pushed along, then one difference with all holes.
function sectionThenHoles({ a, b, t, length, holes }) {
    const whole = keep(Manifold.extrude(
        [[[0, 0], [a, 0], [a, t], [t, t], [t, b], [0, b]]], length));
    if (holes.length === 0) return whole;
    const tools = holes.map(([wall, gauge, along, radius]) => {
        const round = keep(Manifold.cylinder(t + 0.5, radius, radius, chords));
        const turned = keep(round.rotate(wall === 0 ? [-90, 0, 0] : [0, 90, 0]));
        return keep(turned.translate(wall === 0 ? [gauge, -0.25, along] : [-0.25, gauge, along]));
    });
    return keep(Manifold.difference([whole, ...tools]));
}

function circle(x, y, radius) {
    const points = [];
    for (let i = 0; i < chords; ++i) {
        const angle = -2 * Math.PI * i / chords;
        points.push([x + radius * Math.cos(angle), y + radius * Math.sin(angle)]);
    }
    return points;
}

// Each wall a polygon with round holes, pushed through; then one union.
function drilledWalls({ a, b, t, length, holes }) {
    const wall = (index, from, to) => {
        const loops = [[[from, 0], [to, 0], [to, length], [from, length]]];
        for (const [on, gauge, along, radius] of holes)
            if (on === index) loops.push(circle(gauge, along, radius));
        return keep(Manifold.extrude(loops, t));
    };
    const legA = keep(wall(0, 0, a).rotate([90, 0, 0])); // (gauge, along, depth) -> (x, -depth, z)
    const legAPlaced = keep(legA.translate([0, t, 0]));
    const legB = keep(wall(1, t, b).transform(
        [0, 1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0, 1])); // (gauge, along, depth) -> (depth, ...)
    return keep(Manifold.union([legAPlaced, legB]));
}

for (const [name, make] of [["section_then_holes", sectionThenHoles],
                            ["drilled_walls_united", drilledWalls]]) {
    for (const piece of pieces.slice(0, 20)) make(piece).getMesh(); // warm up
    const start = process.cpuUsage();
    let volume = 0;
    let triangles = 0;
    for (const piece of pieces) {
        const solid = make(piece);
        triangles += solid.getMesh().numTri; // it works only when it is asked
        volume += solid.volume();
        while (kept.length > 0) kept.pop().delete();
    }
    const spent = process.cpuUsage(start);
    console.log(JSON.stringify({ name, ms: (spent.user + spent.system) / 1000, volume, triangles }));
}
