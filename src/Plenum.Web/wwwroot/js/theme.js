// Runs before the first paint: the theme that this person chose, if any, and whether single letters act as keys.
(() => {
    const theme = localStorage.getItem('plenum.theme');
    if (theme === 'light' || theme === 'dark') {
        document.documentElement.dataset.theme = theme;
    }
})();
