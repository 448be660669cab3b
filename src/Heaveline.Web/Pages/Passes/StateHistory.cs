namespace Heaveline.Web.Pages.Passes;

/// <summary>The states that the page has stood at, to go back and forth between.</summary>
public sealed class StateHistory
{
    private const int Longest = 200;
    private readonly LinkedList<PassState> past = [];
    private readonly Stack<PassState> future = [];

    /// <summary>Whether there is a state before this one.</summary>
    public bool CanUndo => past.Count > 0;

    /// <summary>Whether a state has been gone back from.</summary>
    public bool CanRedo => future.Count > 0;

    /// <summary>Remembers a state that is about to be left for a new one.</summary>
    public void Leave(PassState state)
    {
        past.AddLast(state);
        future.Clear();
        if (past.Count > Longest)
        {
            past.RemoveFirst();
        }
    }

    /// <summary>The state before; null when there is none.</summary>
    public PassState? Undo(PassState from)
    {
        if (past.Last is not { Value: var state })
        {
            return null;
        }

        past.RemoveLast();
        future.Push(from);
        return state;
    }

    /// <summary>The state gone back from; null when there is none.</summary>
    public PassState? Redo(PassState from)
    {
        if (!future.TryPop(out var state))
        {
            return null;
        }

        past.AddLast(from);
        return state;
    }
}
