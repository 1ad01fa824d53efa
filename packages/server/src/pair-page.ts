/** Where the code is typed on a device that is not paired yet: a page that needs neither script nor style. */

const lines = {
  ask: 'This device is not paired yet. Type the code that is shown on the screen of the computer on which Sparewright runs.',
  wrong: 'That is not the code. Look again at the screen of the computer on which Sparewright runs.',
  wait: 'Too many wrong codes. Wait ten minutes, then try again.',
};

/** No text of anybody's goes into it. */
export function pairPage(says: keyof typeof lines): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>Pair this device – Sparewright</title>
</head>
<body>
<main>
<h1>Pair this device</h1>
<p role="status">${lines[says]}</p>
<form method="post" action="/pair">
<p><label for="code">Code</label><br>
<input id="code" name="code" size="12" maxlength="40" required autofocus autocomplete="off" autocapitalize="characters" spellcheck="false"></p>
<p><button>Pair</button></p>
</form>
</main>
</body>
</html>
`;
}
