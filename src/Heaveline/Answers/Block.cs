using Heaveline.Quantities;

namespace Heaveline.Answers;

/// <summary>One thing on a report's pages, below a heading: words, a list, a table, a figure, a caution or a text as it was given.</summary>
public abstract record Block
{
    // Closed to this assembly: the press must know how to set every kind.
    private protected Block()
    {
    }

    /// <summary>The same in the units of a reader; a text or a command as it was given stays as it is.</summary>
    /// <param name="units">The reader's units.</param>
    public virtual Block In(ReaderUnits units) => this;
}
