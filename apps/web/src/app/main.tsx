import "./first.ts";
import "../sync/parse-setting.ts";
import { QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { CrashGuard } from "../components/crash-guard.tsx";
import { CallError } from "../sync/client.ts";
import { App } from "./app.tsx";
import { KeptLanguage } from "./language.tsx";
import "@fontsource/barlow/latin-400.css";
import "@fontsource/barlow/latin-600.css";
import "@fontsource/barlow/latin-ext-400.css";
import "@fontsource/barlow/latin-ext-600.css";
import "@fontsource/barlow-semi-condensed/latin-500.css";
import "@fontsource/barlow-semi-condensed/latin-600.css";
import "@fontsource/barlow-semi-condensed/latin-ext-500.css";
import "@fontsource/barlow-semi-condensed/latin-ext-600.css";
import "../styles/tokens.css";
import "../styles/base.css";
import "../styles/shell.css";
import "../styles/board.css";
import "../styles/orders.css";
import "../styles/book.css";
import "../styles/findings.css";
import "../styles/plant.css";
import "../styles/promise.css";
import "../styles/sheets.css";
import "../styles/versions.css";
import "../styles/load.css";
import "../styles/what-if.css";
import "../styles/print.css";

const client = new QueryClient({
  defaultOptions: {
    queries: {
      staleTime: 30_000,
      // Only a silent server is worth another try; a refusal stays one.
      retry: (failures, cause) => failures < 2 && cause instanceof CallError && cause.problem.status === 0,
      networkMode: "always",
    },
    mutations: { networkMode: "always" },
  },
});

const root = document.getElementById("root");
if (root !== null) {
  createRoot(root).render(
    <StrictMode>
      <KeptLanguage>
        <CrashGuard>
          <QueryClientProvider client={client}>
            <App />
          </QueryClientProvider>
        </CrashGuard>
      </KeptLanguage>
    </StrictMode>,
  );
}
