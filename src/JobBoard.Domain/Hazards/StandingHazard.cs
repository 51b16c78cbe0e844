namespace JobBoard.Domain.Hazards;

/// <summary>A danger that a task began and that stands until made safe or until a reading ends it.</summary>
/// <param name="Id">Unique on the car: <c>task/hazard</c>.</param>
/// <param name="Hazard">The hazard kind.</param>
/// <param name="Task">The task that began it.</param>
/// <param name="Place">Where it stands when not at the car.</param>
/// <param name="Since">When it began.</param>
/// <param name="By">Who began it.</param>
/// <param name="EndsByReading">The reading (<c>task/reading</c>) that ends it, or nothing.</param>
public sealed record StandingHazard(string Id, string Hazard, string Task, string? Place, DateTimeOffset Since, string By, string? EndsByReading);
