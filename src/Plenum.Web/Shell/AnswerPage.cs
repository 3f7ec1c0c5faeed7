using Microsoft.AspNetCore.Components;
using Plenum.Core;
using Plenum.Workbench.Questions;

namespace Plenum.Web.Shell;

/// <summary>
/// A page that shows answers about the project: asks anew when the address or the project's value changes, keeps what
/// it shows until the new answer is whole, and says so when that takes longer than 300 ms.
/// </summary>
public abstract class AnswerPage : ComponentBase, IDisposable
{
    private int asked;

    [Inject]
    protected Sheet Sheet { get; set; } = null!;

    [Inject]
    private TimeProvider Clock { get; set; } = null!;

    /// <summary>An answer is being computed and takes its time.</summary>
    protected bool Waiting { get; private set; }

    /// <summary>The project's value that the answer is about; null before the first answer.</summary>
    protected Project? Answered { get; private set; }

    /// <summary>Why the question cannot be answered; null if it can.</summary>
    protected string? Trouble { get; private set; }

    /// <summary>Without a single element there is nothing to ask about.</summary>
    protected virtual bool NeedsElements => true;

    /// <summary>
    /// Asks what the page shows. What it returns puts the whole answer into the page's fields; it is done only if
    /// nothing else was asked in the meantime.
    /// </summary>
    protected abstract Task<Action> Ask(Project project);

    protected override async Task OnInitializedAsync()
    {
        Sheet.Changed += OnChanged;
        await AskAgain();
    }

    public void Dispose()
    {
        Sheet.Changed -= OnChanged;
        GC.SuppressFinalize(this);
    }

    private void OnChanged() => _ = InvokeAsync(AskAgain);

    private async Task AskAgain()
    {
        if (Sheet.Project is not { } project || (NeedsElements && project.Tree.Count == 0))
        {
            return;
        }

        var mine = ++asked;
        try
        {
            var asking = Ask(project);
            var wait = Task.Delay(TimeSpan.FromMilliseconds(300), Clock);
            if (await Task.WhenAny(asking, wait) == wait)
            {
                Waiting = true;
                StateHasChanged();
            }

            var show = await asking;
            if (mine == asked)
            {
                Answered = project;
                show();
                Trouble = null;
            }
        }
        catch (QuestionException wrong) when (mine == asked)
        {
            Trouble = wrong.Message;
        }
        catch (QuestionException)
        {
            // the page asks something else by now
        }

        if (mine == asked)
        {
            Waiting = false;
            StateHasChanged();
        }
    }
}
