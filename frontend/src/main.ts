import { mount } from "svelte";
import App from "./app/App.svelte";
import { useWire } from "./app/bench.svelte";
import "./app/look.css";
import { connect, takeToken } from "./wire/client";
import { spoken } from "./words/words.svelte";

useWire(connect(takeToken(location, sessionStorage), () => spoken.language));
mount(App, { target: document.getElementById("app")! });
