import { mount } from "svelte";
import App from "./app/App.svelte";
import { useWire } from "./app/bench.svelte";
import "./app/look.css";
import { connect, takeToken } from "./wire/client";

useWire(connect(takeToken(location, sessionStorage)));
mount(App, { target: document.getElementById("app")! });
