// The script that `columnbowl read` adds to every page it shows. It listens for changes of the
// content: a page that is no longer the newest loads itself again, and a mistake stands over the
// page until it is mended. The server brings the words.

interface Told {
  page: string;
  state: "proving" | "sound" | "wrong";
  title?: string;
  text?: string;
  note?: string;
}

const own = document.documentElement.dataset.read ?? "";
let source: EventSource | null = null;
let shown: HTMLElement | null = null;

// a page in the background does not keep a line open: browsers have few of them for one server
document.addEventListener("visibilitychange", attend);
attend();

function attend(): void {
  if (document.visibilityState === "hidden") {
    source?.close();
    source = null;
    return;
  }
  if (source) return;
  source = new EventSource(`/~changes?page=${encodeURIComponent(decodeURI(location.pathname))}`);
  source.addEventListener("message", (e) => hear(JSON.parse(e.data as string) as Told));
}

function hear(told: Told): void {
  if (told.page !== own) {
    source?.close(); // one loading is enough, however much changes meanwhile
    return location.reload();
  }
  if (document.body) show(told);
  else document.addEventListener("DOMContentLoaded", () => show(told), { once: true });
}

function show(told: Told): void {
  document.documentElement.dataset.reading = told.state;
  shown?.remove();
  shown = null;
  if (told.state !== "wrong") return;
  shown = document.createElement("section");
  shown.className = "readnote";
  shown.setAttribute("role", "alert");
  const title = document.createElement("h2");
  title.textContent = told.title ?? "";
  const text = document.createElement("pre");
  text.tabIndex = 0; // it scrolls, so the keyboard must reach it
  text.textContent = told.text ?? "";
  const note = document.createElement("p");
  note.textContent = told.note ?? "";
  shown.append(title, text, note);
  document.body.append(shown);
}
