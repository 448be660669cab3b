namespace Heaveline.Files.Editing;

/// <summary>Why an edit was not made. The text is then as it was.</summary>
public enum EditProblem
{
    /// <summary>The text is not one YAML document of the kind that is read, so that nothing in it can be found for sure.</summary>
    NotSound,

    /// <summary>The key or item that should be removed, or the item that should be written, is not there.</summary>
    NothingThere,

    /// <summary>The path leads through a single value, or a name fits more than one item of a list.</summary>
    NoSuchPlace,

    /// <summary>An item was to be added to what is no list.</summary>
    NotAList,

    /// <summary>It is the only key of its group or the only item of its list; the group or the list would be left without a value.</summary>
    OnlyOne,

    /// <summary>The value is a text over several lines after | or &gt;, which is not replaced by another.</summary>
    BlockText,

    /// <summary>A comment stands inside the lines that would go, and it does not belong to the value alone.</summary>
    CommentInside,

    /// <summary>A variant was to be written, and nothing differs from its base.</summary>
    NothingChanged,

    /// <summary>Written that way the text would be read as something else, or it would be too long.</summary>
    NotReadBack,
}
