using System.Collections.Immutable;
using JobBoard.Domain.Rules;

namespace JobBoard.Web.Posting;

/// <summary>What became of a posted form, before it is put into words.</summary>
public abstract record Posted
{
    /// <summary>The HTTP status that says the same.</summary>
    public abstract int Status { get; }

    /// <summary>One word for scripts.</summary>
    public abstract string Word { get; }

    /// <summary>It is written down.</summary>
    /// <param name="Seq">The shop's last entry; a screen that has reached it shows it.</param>
    public sealed record Done(long Seq) : Posted
    {
        public override int Status => StatusCodes.Status200OK;

        public override string Word => "done";
    }

    /// <summary>The rules refused it, for these reasons, all of them.</summary>
    public sealed record Refused(ImmutableArray<WaitingOn> Reasons) : Posted
    {
        public override int Status => StatusCodes.Status409Conflict;

        public override string Word => "refused";
    }

    /// <summary>Fields could not be read.</summary>
    public sealed record Invalid(ImmutableArray<FieldFault> Faults) : Posted
    {
        public override int Status => StatusCodes.Status422UnprocessableEntity;

        public override string Word => "invalid";
    }

    /// <summary>It asks for the PIN again.</summary>
    /// <param name="Words">What was wrong with the one given, or nothing when none was.</param>
    public sealed record PinAsked(string? Words) : Posted
    {
        public override int Status => StatusCodes.Status428PreconditionRequired;

        public override string Word => "pin";
    }

    /// <summary>It went no further than the door: not signed in, not one's to send, an old page, or nothing to write to.</summary>
    public sealed record NotTaken(int Code, string Name, string Words) : Posted
    {
        public override int Status => Code;

        public override string Word => Name;
    }
}
