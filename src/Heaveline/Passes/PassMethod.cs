namespace Heaveline.Passes;

/// <summary>
/// With what a pass is solved: <see cref="FixedStep"/>, or <see cref="ExactPieces"/> for cars whose laws are straight between their kinks. There is
/// no other.
/// </summary>
public abstract record PassMethod
{
    private protected PassMethod()
    {
    }

    /// <summary>Solves it.</summary>
    internal abstract Pass Run(PassRequest request, PassRecord record, CancellationToken cancellation);
}
