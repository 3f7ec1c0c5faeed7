using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using Plenum.Core;

namespace Plenum.Workbench.Questions;

/// <summary>
/// Keeps the answers that were given for a project value: each question is computed once, off the asker's thread, and
/// forgotten together with the value. Questions are told apart by equality, so they are records.
/// </summary>
public static class AnswerBook
{
    /// <summary>How many answers a value keeps; beyond it the oldest go.</summary>
    private const int Most = 48;

    private static readonly ConditionalWeakTable<Project, Pages> Books = [];

    /// <summary>The answer to a question, from the book or computed now.</summary>
    /// <exception cref="QuestionException">The question cannot be answered.</exception>
    public static Task<TAnswer> Ask<TQuestion, TAnswer>(
        Project project,
        TQuestion question,
        Func<TQuestion, Project, TAnswer> answer
    )
        where TQuestion : notnull
        where TAnswer : notnull =>
        Books
            .GetOrCreateValue(project)
            .Get(question, () => OnAThreadOfItsOwn(() => answer(question, project)));

    /// <summary>A few long answers at once must not take the threads on which pages are drawn and their waiting is told.</summary>
    private static Task<TAnswer> OnAThreadOfItsOwn<TAnswer>(Func<TAnswer> answer) =>
        Task.Factory.StartNew(
            answer,
            CancellationToken.None,
            TaskCreationOptions.LongRunning,
            TaskScheduler.Default
        );

    private sealed class Pages
    {
        private readonly ConcurrentDictionary<object, Lazy<Task>> answers = new();
        private readonly ConcurrentQueue<object> order = new();

        public Task<TAnswer> Get<TAnswer>(object question, Func<Task<TAnswer>> answer)
        {
            var made = new Lazy<Task>(answer);
            var kept = answers.GetOrAdd(question, made);
            if (ReferenceEquals(kept, made))
            {
                order.Enqueue(question);
                while (answers.Count > Most && order.TryDequeue(out var oldest))
                {
                    answers.TryRemove(oldest, out _);
                }
            }

            var task = (Task<TAnswer>)kept.Value;
            if (task.IsFaulted || task.IsCanceled)
            {
                // what failed is asked again next time
                answers.TryRemove(question, out _);
            }

            return task;
        }
    }
}
