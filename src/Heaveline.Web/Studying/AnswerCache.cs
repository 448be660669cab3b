using Microsoft.Extensions.Caching.Memory;
using Microsoft.Extensions.Options;

namespace Heaveline.Web.Studying;

/// <summary>Answers kept in memory by what was asked; the one not asked for longest makes room for a new one.</summary>
/// <param name="most">How many are kept, at least 1.</param>
internal sealed class AnswerCache<T>(int most) : IDisposable
    where T : class
{
    private readonly MemoryCache answers = new(Options.Create(new MemoryCacheOptions()));

    /// <summary>How many are kept.</summary>
    public int Count => answers.Count;

    /// <summary>What was kept under a key; null when there is nothing.</summary>
    public T? Find(string key) => answers.Get<T>(key);

    /// <summary>Keeps an answer.</summary>
    public void Keep(string key, T answer)
    {
        if (answers.Count >= most && answers.Get<T>(key) is null)
        {
            // A share of one and a half is one.
            answers.Compact(1.5 / answers.Count);
        }

        answers.Set(key, answer);
    }

    public void Dispose() => answers.Dispose();
}
