/** Where the code is typed on a device that is not paired yet: a page that needs no script. */

const lines = {
  ask: 'This device is not paired yet. Type the code that is shown on the screen of the computer on which Sparewright runs.',
  wrong: 'That is not the code. Look again at the screen of the computer on which Sparewright runs.',
  wait: 'Too many wrong codes. Wait ten minutes, then try again.',
};

/** No text of anybody's goes into it; `style` is the address of the screens' own. */
export function pairPage(says: keyof typeof lines, style: string | undefined): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>Pair this device – Sparewright</title>
${style === undefined ? '' : `<link rel="stylesheet" href="${style}">`}
</head>
<body>
<div id="page">
<header class="title-block screen-head"><div class="cell job"><span class="label">Sparewright</span>
<h1>Pair this device</h1></div></header>
<main class="pair-this">
<p role="status"${says === 'ask' ? '' : ' class="refusal"'}>${lines[says]}</p>
<form method="post" action="/pair">
<p class="field"><label for="code">Code</label>
<input id="code" name="code" size="12" maxlength="40" required autofocus autocomplete="off" autocapitalize="characters" spellcheck="false"></p>
<p><button class="broad">Pair</button></p>
</form>
</main>
</div>
</body>
</html>
`;
}
