// The page of standard breakdowns: after a part was left out the cursor stands in its reason.

/** @param {string} id */
export function focusOn(id) {
    const field = document.getElementById(id);
    field?.focus();
    if (field instanceof HTMLInputElement && field.type === 'text') {
        field.onkeydown = (event) => {
            if (event.key === 'Enter') {
                event.preventDefault();
                document.getElementById(id.replace('reason', 'part'))?.focus();
            }
        };
    }
}
