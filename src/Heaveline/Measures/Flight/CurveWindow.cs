using Heaveline.Recording;

namespace Heaveline.Measures;

/// <summary>A stretch of time of a pass whose speed need not be known yet.</summary>
/// <param name="From">Its beginning, s.</param>
/// <param name="To">Its end, s.</param>
internal readonly record struct CurveWindow(NotedNumber From, NotedNumber To)
{
    public static implicit operator CurveWindow(Window known) => new(known.From, known.To);

    /// <summary>It, of a speed that is known.</summary>
    public Window Known => new(From, To);
}
