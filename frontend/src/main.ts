import { mount } from "svelte";
import App from "./app/App.svelte";
import "./app/look.css";
import { connection } from "./state/connection";
import { connect } from "./wire/client";
import { RunKey } from "./wire/key";
import { spoken } from "./words/words.svelte";

const key = new RunKey(sessionStorage);
key.takeFrom(location);
addEventListener("hashchange", () => key.takeFrom(location)); // the address of a new start, put into this window
connection.connect(connect((request) => key.send(request), () => spoken.language));
mount(App, { target: document.getElementById("app")! });
