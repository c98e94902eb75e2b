import { benchCore } from "./core.ts";
import { benchHostileInput } from "./hostile.ts";
import { machine } from "./machine.ts";
import { benchPage } from "./page.ts";
import { benchSharedShim } from "./shared-shim.ts";
import { benchShelf } from "./shelf.ts";
import { benchSticks } from "./sticks.ts";
import { benchUncertainty } from "./uncertainty.ts";

console.log(machine());
await benchCore();
benchSharedShim();
benchSticks();
await benchHostileInput();
await benchPage();
await benchShelf();
await benchUncertainty();
