import { benchCore } from "./core.ts";
import { machine } from "./machine.ts";
import { benchPage } from "./page.ts";

console.log(machine());
await benchCore();
await benchPage();
