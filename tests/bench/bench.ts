import { benchCore } from "./core.ts";
import { benchFamily } from "./family.ts";
import { machine } from "./machine.ts";
import { benchPage } from "./page.ts";
import { benchShelf } from "./shelf.ts";
import { benchUncertainty } from "./uncertainty.ts";

console.log(machine());
await benchCore();
benchFamily();
await benchPage();
await benchShelf();
await benchUncertainty();
